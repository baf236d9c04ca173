package app.ramkeeper.rounds.web;

import app.ramkeeper.shared.Missing;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.TemporalAdjusters;
import org.springframework.stereotype.Component;

/** Which weeks there are: those within two years of today, by their Monday. */
@Component
public class Mondays {

    private final Clock clock;

    Mondays(Clock clock) {
        this.clock = clock;
    }

    LocalDate today() {
        return LocalDate.now(clock);
    }

    /** The minute of today. */
    int minute() {
        return LocalTime.now(clock).toSecondOfDay() / 60;
    }

    /** The week that is planned now: this one, from Friday on the next. */
    LocalDate planned() {
        return of(today().plusDays(3));
    }

    static LocalDate of(LocalDate day) {
        return day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }

    /** The Monday itself; a day that is none, or far away, names no week. */
    LocalDate known(LocalDate monday) {
        if (monday.getDayOfWeek() != DayOfWeek.MONDAY
                || monday.isBefore(today().minusYears(2))
                || monday.isAfter(today().plusYears(2))) {
            throw new Missing("week", monday);
        }
        return monday;
    }
}
