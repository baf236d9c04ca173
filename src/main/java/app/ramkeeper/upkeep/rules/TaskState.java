package app.ramkeeper.upkeep.rules;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** How a task stands on a day. It is never stored. */
public enum TaskState {
    /** Past the window. */
    OVERDUE("overdue"),
    /** The due date has come, the window is still open. */
    DUE("due"),
    /** Early, but fine. */
    IN_WINDOW("due"),
    NOT_YET("later"),
    ASLEEP("asleep"),
    /** Nobody knows when it was last done. */
    UNKNOWN("unknown"),
    /** Only something that happens makes it due. */
    NOTHING_DUE("later"),
    /** Never done, and nothing to count from yet: it starts when the install is commissioned. */
    PLANNED("later"),
    BY_OWNER("owner"),
    DECLINED("declined");

    private final String mark;

    TaskState(String mark) {
        this.mark = mark;
    }

    /** The style class of its mark. */
    public String mark() {
        return mark;
    }

    /** How a task stands today. */
    public static TaskState of(
            DoneBy doneBy,
            LastDone lastDone,
            DueDate due,
            @Nullable LocalDate asleepSince,
            @Nullable LocalDate wakesOn,
            LocalDate today) {
        if (doneBy != DoneBy.US) {
            return doneBy == DoneBy.OWNER ? BY_OWNER : DECLINED;
        }
        if (asleepSince != null && !asleepSince.isAfter(today) && (wakesOn == null || wakesOn.isAfter(today))) {
            return ASLEEP;
        }
        if (due.on() == null || due.windowFrom() == null || due.windowUntil() == null) {
            return lastDone == LastDone.UNKNOWN ? UNKNOWN : lastDone == LastDone.NEVER ? PLANNED : NOTHING_DUE;
        }
        if (today.isAfter(due.windowUntil())) {
            return OVERDUE;
        }
        return !today.isBefore(due.on()) ? DUE : today.isBefore(due.windowFrom()) ? NOT_YET : IN_WINDOW;
    }
}
