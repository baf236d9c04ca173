package app.ramkeeper.rounds.week;

import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Two plans of one week side by side: what moved, and what that does to driving and lateness. */
public record Comparison(Side before, Side after, List<Shift> shifts) {

    /**
     * What one plan comes to.
     *
     * @param broken rules it breaks, explained or not
     * @param lateDays days after the due date, added up over all visits with one; what is left out counts to the next Monday
     */
    public record Side(Week.Totals totals, int broken, long lateDays) {

        static Side of(Week week) {
            long late = week.stops().stream()
                    .filter(stop -> stop.dueOn() != null && (stop.placed() || stop.must()))
                    .mapToLong(stop -> Math.max(
                            0,
                            ChronoUnit.DAYS.between(
                                    stop.dueOn(),
                                    stop.day() == null ? week.plan().monday().plusDays(7) : stop.day())))
                    .sum();
            return new Side(week.totals(), week.breaches().size(), late);
        }
    }

    /**
     * A visit that stands elsewhere; null is in no round.
     *
     * @param began when work would start before, in minutes of the day
     * @param starts when work would start after
     */
    public record Shift(
            Stop stop,
            @Nullable String from,
            @Nullable String to,
            @Nullable Double began,
            @Nullable Double starts) {}

    /** Compares the same week in two arrangements. */
    public static Comparison of(Week before, Week after) {
        List<Shift> shifts = new ArrayList<>();
        for (Stop now : after.stops()) {
            Optional<Stop> then = before.stop(now.id());
            String from = then.map(s -> place(before, s)).orElse(null);
            String to = place(after, now);
            if (!Objects.equals(from, to)) {
                shifts.add(new Shift(
                        now, from, to, then.map(s -> starts(before, s)).orElse(null), starts(after, now)));
            }
        }
        shifts.sort(Comparator.comparing(shift -> shift.stop().site()));
        return new Comparison(Side.of(before), Side.of(after), shifts);
    }

    private static @Nullable String place(Week week, Stop stop) {
        if (stop.personId() == null || stop.day() == null) {
            return null;
        }
        String who = week.round(stop.personId(), stop.day()).map(TechDay::name).orElse("somebody");
        return who + ", " + Times.day(stop.day());
    }

    private static @Nullable Double starts(Week week, Stop stop) {
        if (stop.personId() == null || stop.day() == null) {
            return null;
        }
        DayTimes.Line line =
                week.times(new RoundKey(stop.personId(), stop.day())).lineOf(stop.id());
        return line == null ? null : line.starts();
    }

    /** Driving minutes after, less those before. */
    public double driving() {
        return after.totals().driveMinutes() - before.totals().driveMinutes();
    }
}
