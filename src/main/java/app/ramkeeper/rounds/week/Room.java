package app.ramkeeper.rounds.week;

import app.ramkeeper.rounds.week.Bundle.Lengths;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;

/**
 * Where the planned visits that nobody is to move have room to grow. What is agreed comes first: a visit becomes as long as its own tasks
 * need, and then takes what rides along, only where no agreed time, access or day's end is missed for it.
 */
final class Room {

    private final Week week;
    private final LocalDate today;
    private final Map<UUID, Lengths> lengths;
    private final Map<UUID, Integer> chosen = new HashMap<>();

    Room(Week week, LocalDate today, Map<UUID, Lengths> lengths) {
        this.week = week;
        this.today = today;
        this.lengths = lengths;
    }

    /** The minutes of each visit that stands where the optimiser leaves it. */
    Map<UUID, Integer> minutes() {
        week.rounds().forEach(this::share);
        return chosen;
    }

    private void share(TechDay round) {
        List<Stop> bound = week.stopsOf(round.key()).stream()
                .filter(stop -> isBound(stop, round))
                .toList();
        List<Stop> grow = bound.stream()
                .filter(stop -> lengths.containsKey(stop.id()) && !stop.over() && stop.excuse() == null)
                .sorted(Comparator.<Stop, Boolean>comparing(stop -> stop.fixedOn() == null)
                        .thenComparing(Comparator.comparingDouble(Stop::worth).reversed()))
                .toList();
        grow.forEach(stop -> chosen.put(stop.id(), of(stop).given()));
        DayTimes times = driven(round, bound);
        for (Stop stop : grow) {
            int minutes = of(stop).given();
            for (int longer : List.of(of(stop).own(), of(stop).full())) {
                chosen.put(stop.id(), longer);
                DayTimes then = driven(round, bound);
                if (breaksMore(then, times)) {
                    chosen.put(stop.id(), minutes);
                    break;
                }
                times = then;
                minutes = longer;
            }
        }
    }

    /** The optimiser lets it stand on its day: it is agreed or locked, or the day is past or under way. */
    private boolean isBound(Stop stop, TechDay round) {
        return !round.day().isAfter(today) || round.locked() || stop.locked() || stop.fixedOn() != null;
    }

    private Lengths of(Stop stop) {
        return Objects.requireNonNull(lengths.get(stop.id()));
    }

    private DayTimes driven(TechDay round, List<Stop> stops) {
        return week.drive()
                .through(
                        round,
                        stops.stream()
                                .map(stop -> Stops.lasting(stop, chosen.getOrDefault(stop.id(), stop.minutes())))
                                .toList());
    }

    private static boolean breaksMore(DayTimes then, DayTimes now) {
        return then.breaches().size() > now.breaches().size()
                || (!then.breaches().isEmpty() && then.back() > now.back() + 1e-9);
    }
}
