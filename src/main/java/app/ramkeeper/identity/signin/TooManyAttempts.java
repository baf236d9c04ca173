package app.ramkeeper.identity.signin;

import java.time.Duration;
import org.springframework.security.core.AuthenticationException;

/** Says that this was tried too often and when the next try is heard. */
public class TooManyAttempts extends AuthenticationException {

    private final Duration pause;

    TooManyAttempts(Duration pause) {
        super("Too many attempts; the next is heard in " + pause.toSeconds() + " s");
        this.pause = pause;
    }

    public Duration pause() {
        return pause;
    }
}
