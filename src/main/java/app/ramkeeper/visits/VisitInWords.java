package app.ramkeeper.visits;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * One visit as a technician reads it before driving.
 *
 * @param who who led it
 * @param words what was done, found and measured, in a few sentences
 * @param note the whole of a note that the words cut short
 */
public record VisitInWords(
        ReportId report,
        LocalDate on,
        @Nullable String who,
        VisitKind kind,
        ReportOutcome outcome,
        String words,
        @Nullable String note,
        @Nullable String promised) {}
