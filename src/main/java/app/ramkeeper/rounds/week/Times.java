package app.ramkeeper.rounds.week;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Times of a plan, counted in minutes of the day, and how they are said; templates call it as {@code ${@times.span(x)}}. */
@Component("times")
public class Times {

    /** Minutes of a day. */
    static final int DAY_LONG = 24 * 60;

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM", Locale.UK);
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.UK);

    Times() {}

    static int of(LocalTime time) {
        return time.toSecondOfDay() / 60;
    }

    /** "14:05"; what passes midnight is said as such, "00:40 the next day". */
    public static String say(double minutes) {
        int whole = (int) Math.max(0, Math.round(minutes));
        return TIME.format(LocalTime.of(whole / 60 % 24, whole % 60)) + (whole >= DAY_LONG ? " the next day" : "");
    }

    /** "Tue 1 Dec". */
    public static String day(LocalDate day) {
        return DAY.format(day);
    }

    /** "Tue 1 Dec, 09:45"; the day alone without a time. */
    public static String dayAndTime(LocalDate day, @Nullable LocalTime time) {
        return time == null ? DAY.format(day) : DAY.format(day) + ", " + TIME.format(time);
    }

    /** "Tue 1 Dec", with the year where it may be mistaken for one nearer to the other day. */
    static String day(LocalDate day, LocalDate near) {
        long apart = Math.abs(ChronoUnit.DAYS.between(day, near));
        return apart > 180 ? DAY.format(day) + " " + day.getYear() : DAY.format(day);
    }

    /** "1 h 15 min", "40 min". */
    public static String span(double minutes) {
        long whole = Math.round(minutes);
        if (whole < 60) {
            return whole + " min";
        }
        return whole / 60 + " h" + (whole % 60 == 0 ? "" : " " + whole % 60 + " min");
    }
}
