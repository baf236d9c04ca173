package app.ramkeeper.upkeep.rules;

import app.ramkeeper.catalogue.Interval;
import app.ramkeeper.catalogue.Life;
import app.ramkeeper.catalogue.Schedule;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** When a task falls due; null where no date can be known or none is set. */
public record DueDate(
        @Nullable LocalDate on,
        @Nullable LocalDate windowFrom,
        @Nullable LocalDate windowUntil) {

    private static final DueDate NONE = new DueDate(null, null, null);

    /**
     * Works out the date.
     *
     * <p>The interval is added to the last day in one step. An inspection since then sets the date by which to look
     * again in its place. A decline or an event may only bring the date forward. A date that falls into a sleep waits
     * until the ram has been awake for the grace; one that was past before the sleep stays where it was.
     */
    public static DueDate of(Terms terms, Standing standing, List<Idle> idles) {
        LocalDate look = standing.openLook();
        LocalDate planned = look == null ? planned(terms, standing, idles) : look;
        LocalDate due = afterSleep(earlier(planned, standing.openForward()), terms.graceDays(), idles);
        return due == null ? NONE : new DueDate(due, due.minusDays(terms.earlyDays()), due.plusDays(terms.lateDays()));
    }

    /** The next dates if each is done on its day: the due date, then last done and k intervals, each in one step. */
    public static List<LocalDate> forecast(Terms terms, Standing standing, List<Idle> idles, int count) {
        LocalDate first = of(terms, standing, idles).on();
        LocalDate base = standing.base();
        if (first == null || count < 1) {
            return List.of();
        }
        return IntStream.rangeClosed(1, count)
                .mapToObj(k -> k == 1 ? first : repeat(terms, base == null ? first : base, first, idles, k))
                .filter(Objects::nonNull)
                .toList();
    }

    private static @Nullable LocalDate repeat(Terms terms, LocalDate base, LocalDate first, List<Idle> idles, int k) {
        return switch (terms.schedule()) {
            case INTERVAL -> intervalEnd(terms, base, terms.interval().times(k), idles);
            case SEASON -> Season.of(terms).in(first.getYear() + k - 1);
            case EVENT -> null;
        };
    }

    private static @Nullable LocalDate planned(Terms terms, Standing standing, List<Idle> idles) {
        LocalDate base = standing.base();
        if (base == null || terms.schedule() == Schedule.EVENT) {
            return null;
        }
        if (terms.schedule() == Schedule.SEASON) {
            return standing.lastDoneOn() == null
                    ? Season.of(terms).onOrAfter(base)
                    : Season.of(terms).nextAfterDone(base);
        }
        return intervalEnd(terms, base, terms.interval(), idles);
    }

    private static LocalDate intervalEnd(Terms terms, LocalDate base, Interval interval, List<Idle> idles) {
        LocalDate end = interval.after(base);
        return terms.life() == Life.CALENDAR ? end : RunningDays.after(base, end, idles);
    }

    private static @Nullable LocalDate afterSleep(@Nullable LocalDate due, int grace, List<Idle> idles) {
        if (due == null) {
            return null;
        }
        LocalDate moved = due;
        for (Idle sleep : idles.stream()
                .filter(Idle::asleep)
                .sorted(Comparator.comparing(Idle::from))
                .toList()) {
            LocalDate until = sleep.until();
            boolean into = until != null && !moved.isBefore(sleep.from()) && moved.isBefore(until.plusDays(grace));
            moved = into ? Objects.requireNonNull(until).plusDays(grace) : moved;
        }
        return moved;
    }

    private static @Nullable LocalDate earlier(@Nullable LocalDate one, @Nullable LocalDate other) {
        return one == null || (other != null && other.isBefore(one)) ? other : one;
    }
}
