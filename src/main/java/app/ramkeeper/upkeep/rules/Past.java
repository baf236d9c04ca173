package app.ramkeeper.upkeep.rules;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What all reports together say about a task; the order in which they came in does not matter.
 *
 * @param lastDoneOn the latest day it was done, by whoever
 * @param report the report that says so; null if somebody stated the day without one
 * @param lookAgainOn when the last inspection since then asked to look again
 * @param lookedOn the day of that inspection
 * @param hindrance the latest attempt since then that failed
 */
public record Past(
        @Nullable LocalDate lastDoneOn,
        LastDone lastDoneAs,
        @Nullable UUID report,
        @Nullable LocalDate lookAgainOn,
        @Nullable LocalDate lookedOn,
        @Nullable Work hindrance) {

    private static final Comparator<Work> LATEST =
            Comparator.comparing(Work::on).thenComparing(work -> !work.about()).thenComparing(Work::report);

    /**
     * Folds the works.
     *
     * @param stated the last day as somebody stated it, without a report
     * @param none what to say when neither a report nor a statement gives a day
     */
    public static Past of(List<Work> works, @Nullable Stated stated, LastDone none) {
        Optional<Work> done = latest(works, Work.Outcome.DONE, null);
        if (stated != null && done.map(work -> work.on().isBefore(stated.on())).orElse(true)) {
            return since(works, stated.on(), stated.about() ? LastDone.ABOUT : LastDone.KNOWN, null);
        }
        return done.map(work -> since(works, work.on(), work.about() ? LastDone.ABOUT : LastDone.KNOWN, work.report()))
                .orElseGet(() -> since(works, null, none, null));
    }

    private static Past since(List<Work> works, @Nullable LocalDate last, LastDone as, @Nullable UUID report) {
        Work look = latest(works, Work.Outcome.INSPECTED_GOOD, last)
                .filter(work -> work.lookAgainOn() != null)
                .orElse(null);
        Work hindrance = latest(works, Work.Outcome.COULD_NOT, last).orElse(null);
        return new Past(
                last, as, report, look == null ? null : look.lookAgainOn(), look == null ? null : look.on(), hindrance);
    }

    private static Optional<Work> latest(List<Work> works, Work.Outcome outcome, @Nullable LocalDate after) {
        return works.stream()
                .filter(work ->
                        work.outcome() == outcome && (after == null || work.on().isAfter(after)))
                .max(LATEST);
    }

    /** A last day that somebody stated: "the owner changed it about May". */
    public record Stated(LocalDate on, boolean about) {}
}
