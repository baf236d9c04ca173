package app.ramkeeper.upkeep.rules;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.Objects;

/** The same day every year; 29 February is the 28th where there is none. */
record Season(MonthDay day, int earlyDays) {

    static Season of(Terms terms) {
        return new Season(Objects.requireNonNull(terms.season(), "A season needs its day"), terms.earlyDays());
    }

    LocalDate in(int year) {
        return day.atYear(year);
    }

    /** The first season's day on or after a day. */
    LocalDate onOrAfter(LocalDate from) {
        LocalDate sameYear = in(from.getYear());
        return sameYear.isBefore(from) ? in(from.getYear() + 1) : sameYear;
    }

    /** The first season's day whose window had not opened when it was last done: done early or late counts for its season. */
    LocalDate nextAfterDone(LocalDate lastDone) {
        return onOrAfter(lastDone.plusDays(earlyDays + 1L));
    }
}
