package app.ramkeeper.rounds.week;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A service task that may go into the week, with what its worth hangs on. */
public record DueRow(
        UUID taskId,
        UUID siteId,
        String site,
        UUID installId,
        @Nullable UUID pumpId,
        UUID kindId,
        String kind,
        int minutes,
        int crew,
        double weight,
        LocalDate dueOn,
        LocalDate windowFrom,
        LocalDate windowUntil,
        @Nullable UUID visitId,
        @Nullable Double latitude,
        @Nullable Double longitude) {

    /** What a day late costs for a task of weight 1, minutes of driving; common practice, without source. */
    private static final double A_DAY = 6;

    /** What a day sooner is worth within the week: so much that the last day is still better than leaving the task out. */
    private static final double A_DAY_SOONER = 14;

    /** How pressing a task is within a week. */
    public enum Press {
        OVERDUE,
        LAST_WEEK,
        IN_WINDOW,
        SOON
    }

    Press press(LocalDate monday) {
        if (windowUntil.isBefore(monday)) {
            return Press.OVERDUE;
        }
        if (!windowUntil.isAfter(monday.plusDays(6))) {
            return Press.LAST_WEEK;
        }
        return windowFrom.isAfter(monday.plusDays(6)) ? Press.SOON : Press.IN_WINDOW;
    }

    /**
     * What leaving the task out of the week costs, in minutes of driving. A task past its window weighs by its kind and
     * grows with each day; one within its window by how much of it is used up. The scale is common practice, without source.
     */
    double worth(LocalDate monday) {
        LocalDate sunday = monday.plusDays(6);
        long late = ChronoUnit.DAYS.between(windowUntil, sunday);
        return switch (press(monday)) {
            case OVERDUE, LAST_WEEK -> 90 + A_DAY * weight * Math.min(60, late + 7);
            case IN_WINDOW -> {
                double window = Math.max(1, ChronoUnit.DAYS.between(windowFrom, windowUntil));
                double through = ChronoUnit.DAYS.between(windowFrom, sunday) / window;
                yield 8 + 45 * Math.sqrt(weight) * through * through;
            }
            case SOON -> 6;
        };
    }

    /** What each further day past its window costs within the week. */
    double worthADay(LocalDate monday) {
        return pressing(monday) ? A_DAY_SOONER * weight : 0;
    }

    boolean pressing(LocalDate monday) {
        return !windowUntil.isAfter(monday.plusDays(6));
    }
}
