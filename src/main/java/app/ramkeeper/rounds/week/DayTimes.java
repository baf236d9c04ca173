package app.ramkeeper.rounds.week;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A round driven through: when it leaves, reaches, starts and ends each visit, and which rules that breaks.
 *
 * @param leaves minute of the day at which it leaves
 * @param lines one a visit, in order
 * @param homeDrive minutes of the last leg
 * @param back minute of the day at which it is back
 * @param drive all driving, minutes
 * @param metres all driving, metres
 * @param work all time at sites, minutes
 * @param spare minutes left of the day
 */
public record DayTimes(
        double leaves,
        List<Line> lines,
        double homeDrive,
        double back,
        double drive,
        double metres,
        double work,
        double spare,
        List<Breach> breaches) {

    /**
     * A visit of the round.
     *
     * @param clean minutes of cleaning boots and tools before driving on to this visit
     * @param pause where the break is taken: minutes before this visit, else 0
     */
    public record Line(
            Stop stop, double drive, double clean, double pause, double arrives, double starts, double ends) {

        public double waits() {
            return Math.max(0, starts - arrives - pause);
        }
    }

    /** A rule that is broken at a visit; round-wide ones stand at its last visit. */
    public record Breach(Stop stop, String words) {

        /** True while the office has not said why. */
        public boolean open() {
            return stop.excuse() == null;
        }
    }

    public List<Breach> at(Stop stop) {
        return breaches.stream().filter(b -> b.stop().id().equals(stop.id())).toList();
    }

    public @Nullable Line lineOf(java.util.UUID stop) {
        return lines.stream()
                .filter(l -> l.stop().id().equals(stop))
                .findFirst()
                .orElse(null);
    }

    public static DayTimes empty() {
        return new DayTimes(0, List.of(), 0, 0, 0, 0, 0, 0, List.of());
    }
}
