package app.ramkeeper.upkeep.rules;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What one report says about one task.
 *
 * @param on the day of the visit, never the day it was written down
 * @param about the day is only roughly known
 * @param lookAgainOn for an inspection: when to look again
 * @param hindrance for what could not be done: whose it is
 */
public record Work(
        UUID report,
        LocalDate on,
        Outcome outcome,
        boolean about,
        @Nullable LocalDate lookAgainOn,
        @Nullable Waiting hindrance,
        @Nullable String note) {

    /** What came of it. */
    public enum Outcome {
        DONE,
        INSPECTED_GOOD,
        COULD_NOT
    }

    public static Work done(UUID report, LocalDate on) {
        return new Work(report, on, Outcome.DONE, false, null, null, null);
    }

    public static Work doneAbout(UUID report, LocalDate on) {
        return new Work(report, on, Outcome.DONE, true, null, null, null);
    }

    public static Work inspectedGood(UUID report, LocalDate on, @Nullable LocalDate lookAgainOn) {
        return new Work(report, on, Outcome.INSPECTED_GOOD, false, lookAgainOn, null, null);
    }

    public static Work couldNot(UUID report, LocalDate on, Waiting hindrance, @Nullable String note) {
        return new Work(report, on, Outcome.COULD_NOT, false, null, hindrance, note);
    }
}
