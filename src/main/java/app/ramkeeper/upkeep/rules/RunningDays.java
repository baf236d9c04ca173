package app.ramkeeper.upkeep.rules;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;

/** Counts the days on which a ram beats. An idle time that has not ended is counted once it ends. */
final class RunningDays {

    private RunningDays() {}

    /** The day on which as many running days have passed since the base as there are calendar days up to the end. */
    static LocalDate after(LocalDate base, LocalDate end, List<Idle> idles) {
        long left = ChronoUnit.DAYS.between(base, end);
        LocalDate at = base;
        for (Idle idle : ended(idles)) {
            LocalDate until = Objects.requireNonNull(idle.until());
            if (until.isAfter(at)) {
                LocalDate stops = idle.from().isBefore(at) ? at : idle.from();
                long ran = ChronoUnit.DAYS.between(at, stops);
                if (left <= ran) {
                    break;
                }
                left -= ran;
                at = until;
            }
        }
        return at.plusDays(left);
    }

    private static List<Idle> ended(List<Idle> idles) {
        return idles.stream()
                .filter(idle -> idle.until() != null)
                .sorted(Comparator.comparing(Idle::from))
                .toList();
    }
}
