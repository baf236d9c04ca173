package app.ramkeeper.visits.calls;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A call as its page shows it.
 *
 * @param line what lists show too
 * @param form what was asked and said
 * @param arrivedAt when somebody was there, by the report in force on its visit
 */
public record CallView(
        CallLine line,
        CallForm form,
        @Nullable String installName,
        String takenBy,
        @Nullable String visitState,
        @Nullable UUID reportId,
        @Nullable Instant arrivedAt,
        @Nullable LocalDate attendedOn,
        @Nullable String closedBy,
        @Nullable String closedNote) {

    public boolean open() {
        return line.closedAt() == null;
    }

    /** Whether a visit may be planned from it: open, and no visit of it stands. */
    public boolean wantsVisit() {
        return open() && line.siteId() != null && (visitState == null || visitState.equals("CANCELLED"));
    }

    /** From the call to somebody's arrival, "5 h 20 min"; null while nobody was there or the hour is not known. */
    public @Nullable String response() {
        if (arrivedAt == null || arrivedAt.isBefore(line.receivedAt())) {
            return null;
        }
        Duration taken = Duration.between(line.receivedAt(), arrivedAt);
        return (taken.toHours() == 0 ? "" : taken.toHours() + " h ") + taken.toMinutesPart() + " min";
    }
}
