package app.ramkeeper.upkeep;

import app.ramkeeper.catalogue.Interval;
import app.ramkeeper.upkeep.rules.Past;
import app.ramkeeper.upkeep.rules.Waiting;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A task as it is stored, with what its date depends on.
 *
 * @param planned its install is not commissioned yet
 * @param fittedOn since when its pump stands at this install; null: always
 * @param agreed the interval agreed for this install
 * @param stated a last day that somebody stated without a report
 */
record TaskRow(
        UUID id,
        UUID install,
        @Nullable UUID pump,
        UUID kind,
        @Nullable UUID model,
        @Nullable String waterClass,
        boolean planned,
        @Nullable LocalDate fittedOn,
        @Nullable Interval agreed,
        Past.@Nullable Stated stated,
        @Nullable LocalDate countingFrom,
        Dates dates,
        @Nullable UUID waitingReport) {

    /** What recomputing may change. */
    record Dates(
            @Nullable LocalDate lastDoneOn,
            String lastDoneAs,
            @Nullable UUID lastReport,
            @Nullable LocalDate lookAgainOn,
            @Nullable LocalDate lookedOn,
            @Nullable LocalDate forwardTo,
            @Nullable LocalDate forwardSince,
            @Nullable String forwardReason,
            @Nullable LocalDate dueOn,
            @Nullable LocalDate windowFrom,
            @Nullable LocalDate windowUntil,
            @Nullable LocalDate asleepSince,
            @Nullable LocalDate wakesOn,
            Waiting waiting,
            @Nullable LocalDate waitingSince,
            @Nullable String waitingNote,
            @Nullable UUID waitingReport) {}
}
