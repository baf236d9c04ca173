package app.ramkeeper.rounds.week;

import app.ramkeeper.rounds.week.DayTimes.Breach;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/** Says what a change does to times and rules. */
public final class Effects {

    private Effects() {}

    /** "Driving +12 min. Ana, Tue 1 Dec: back 16:40 (before 16:20). Breaks a rule: ..." */
    static String between(Week old, Week now, UUID moved) {
        Set<RoundKey> touched = new LinkedHashSet<>();
        for (Week week : List.of(old, now)) {
            week.stop(moved)
                    .filter(Stop::placed)
                    .ifPresent(s -> touched.add(new RoundKey(
                            java.util.Objects.requireNonNull(s.personId()),
                            java.util.Objects.requireNonNull(s.day()))));
        }
        List<String> parts = new ArrayList<>();
        double drive = touched.stream()
                .mapToDouble(k -> now.times(k).drive() - old.times(k).drive())
                .sum();
        parts.add("Driving " + signed(drive));
        for (RoundKey key : touched) {
            now.round(key.person(), key.day())
                    .ifPresent(round -> parts.add(round.name() + ", " + Times.day(key.day()) + ": "
                            + back(now.times(key)) + " (before: " + back(old.times(key)) + ")"));
        }
        Set<String> before = words(old.breaches());
        List<String> fresh = now.breaches().stream()
                .map(b -> b.stop().site() + ": " + b.words())
                .filter(b -> !before.contains(b))
                .toList();
        parts.add(fresh.isEmpty() ? "No rule is broken by it." : "Breaks a rule: " + String.join("; ", fresh));
        return String.join(". ", parts).replace("..", ".");
    }

    private static Set<String> words(List<Breach> breaches) {
        return breaches.stream().map(b -> b.stop().site() + ": " + b.words()).collect(Collectors.toSet());
    }

    private static String back(DayTimes times) {
        return times.lines().isEmpty() ? "no visits" : "back " + Times.say(times.back());
    }

    /** "+12 min", "−1 h 7 min", "±0 min". */
    public static String signed(double minutes) {
        long whole = Math.round(minutes);
        return (whole > 0 ? "+" : whole < 0 ? "−" : "±") + Times.span(Math.abs(whole));
    }
}
