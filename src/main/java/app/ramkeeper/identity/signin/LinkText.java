package app.ramkeeper.identity.signin;

import java.time.Duration;

/** The words around a one-time link in a mail. */
public final class LinkText {

    public static final String SUBJECT = "Set your Ramkeeper password";

    private LinkText() {}

    public static String of(String link, Duration lifetime) {
        String span = lifetime.toHours() >= 2 ? lifetime.toHours() + " hours" : lifetime.toMinutes() + " minutes";
        return """
                Open this address to set your password. It works once, for %s:

                %s

                If you did not expect this, leave it alone; nothing has changed.
                """.formatted(span, link);
    }
}
