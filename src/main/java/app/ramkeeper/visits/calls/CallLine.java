package app.ramkeeper.visits.calls;

import app.ramkeeper.visits.Symptom;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A call in a list; {@code dryAt} is when the water ends by what the caller said. */
public record CallLine(
        UUID id,
        Instant receivedAt,
        @Nullable String caller,
        @Nullable String phone,
        String place,
        @Nullable UUID siteId,
        Symptom symptom,
        @Nullable Instant dryAt,
        boolean peopleDry,
        boolean stockDry,
        @Nullable Instant promisedBy,
        @Nullable UUID visitId,
        @Nullable LocalDate visitOn,
        @Nullable Instant closedAt) {

    /** Whether what was promised is past its time. */
    public boolean promiseBroken(Instant now) {
        return closedAt == null && promisedBy != null && promisedBy.isBefore(now);
    }
}
