package app.ramkeeper.quotes.offer;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** What became of a quote, when and by whom. */
public record Step(
        int revision,
        Instant at,
        Kind step,
        String byWhom,
        @Nullable String note) {

    /** What happened. */
    public enum Kind {
        CREATED,
        REVISED,
        SENT,
        OPENED,
        ACCEPTED,
        DECLINED,
        LAPSED,
        LINK_MADE,
        LINK_REVOKED,
        HANDED_OVER
    }
}
