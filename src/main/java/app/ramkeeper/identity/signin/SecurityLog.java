package app.ramkeeper.identity.signin;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/** One line for each event of security: UTC time, what, result, who, from where. No secret ever stands in it. */
@Component
public class SecurityLog {

    private static final Logger LOG = LoggerFactory.getLogger("ramkeeper.security");
    private static final int LONGEST = 120;

    private final Clock clock;

    SecurityLog(Clock clock) {
        this.clock = clock;
    }

    /** Writes the line. */
    public void event(String what, String result, String who, @Nullable String from, String detail) {
        LOG.info(
                "time={} event={} result={} who=\"{}\" from=\"{}\" detail=\"{}\"",
                clock.instant().truncatedTo(ChronoUnit.MILLIS),
                what,
                result,
                plain(who),
                plain(from == null ? "-" : from),
                plain(detail));
    }

    /** The text on one line: quotes and everything unprintable escaped, the rest cut. */
    static String plain(String text) {
        StringBuilder plain = new StringBuilder();
        for (int i = 0; i < text.length() && plain.length() < LONGEST; i++) {
            char c = text.charAt(i);
            boolean printable = Character.isLetterOrDigit(c) || " .,:;_-+/@()[]?=&%*|".indexOf(c) >= 0;
            plain.append(printable ? String.valueOf(c) : "\\u%04x".formatted((int) c));
        }
        return plain.length() < LONGEST ? plain.toString() : plain.substring(0, LONGEST) + "...";
    }
}
