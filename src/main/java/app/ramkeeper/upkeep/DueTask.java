package app.ramkeeper.upkeep;

import app.ramkeeper.upkeep.rules.DoneBy;
import app.ramkeeper.upkeep.rules.LastDone;
import app.ramkeeper.upkeep.rules.TaskState;
import app.ramkeeper.upkeep.rules.Waiting;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A task as lists and the site sheet show it, with its state today. */
public record DueTask(
        UUID id,
        UUID siteId,
        String siteName,
        @Nullable String locality,
        @Nullable String depotName,
        UUID installId,
        String installName,
        @Nullable UUID pumpId,
        @Nullable String pumpName,
        @Nullable UUID modelId,
        UUID kindId,
        String kindName,
        boolean watched,
        int minutes,
        TaskState state,
        DoneBy doneBy,
        @Nullable LocalDate dueOn,
        @Nullable LocalDate windowFrom,
        @Nullable LocalDate windowUntil,
        @Nullable LocalDate lastDoneOn,
        LastDone lastDoneAs,
        @Nullable LocalDate countingFrom,
        @Nullable LocalDate lookAgainOn,
        @Nullable String forwardReason,
        @Nullable LocalDate asleepSince,
        @Nullable LocalDate wakesOn,
        Waiting waiting,
        @Nullable LocalDate waitingSince,
        @Nullable String waitingNote,
        @Nullable LocalDate plannedOn,
        @Nullable UUID plannedVisit) {

    /** True if somebody who is there should do it: overdue, due, in its window, or nobody knows when it was last done. */
    public boolean presses() {
        return switch (state) {
            case OVERDUE, DUE, IN_WINDOW, UNKNOWN -> true;
            default -> false;
        };
    }

    /** Where the interval began, for its bar. */
    public @Nullable LocalDate from() {
        return lastDoneOn == null ? countingFrom : lastDoneOn;
    }
}
