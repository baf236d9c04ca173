package app.ramkeeper.fleet;

import java.time.DayOfWeek;
import java.time.LocalTime;

/** Hours of a weekday at which one may come; weekday 1 is Monday. */
public record AccessWindow(int weekday, LocalTime from, LocalTime until) {

    public DayOfWeek day() {
        return DayOfWeek.of(weekday);
    }
}
