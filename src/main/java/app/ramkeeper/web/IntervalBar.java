package app.ramkeeper.web;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import org.jspecify.annotations.Nullable;

/**
 * The geometry of an interval bar 120 units wide, for the fragment {@code fragments/interval}.
 *
 * @param run width of the part of the interval that has run, up to the due date
 * @param tick where the due date stands; negative when it is unknown
 * @param past width of the part past the due date
 * @param hatch the path of the hatching over that part
 * @param text the same in words
 */
public record IntervalBar(double run, double tick, double past, String hatch, String text) {

    private static final double WIDTH = 120;
    private static final double DUE_AT = 80;

    /** Draws the bar from the last done day (or the day counting began) to today against the due day. */
    public static IntervalBar of(@Nullable LocalDate from, @Nullable LocalDate due, LocalDate today) {
        if (due == null) {
            return new IntervalBar(0, -1, 0, "", "due date unknown");
        }
        LocalDate start = from == null || !from.isBefore(due) ? due.minusYears(1) : from;
        double perDay = DUE_AT / Math.max(1, ChronoUnit.DAYS.between(start, due));
        double now = Math.max(0, ChronoUnit.DAYS.between(start, today) * perDay);
        double past = Math.min(WIDTH - DUE_AT, Math.max(0, now - DUE_AT));
        return new IntervalBar(round(Math.min(now, DUE_AT)), DUE_AT, round(past), hatch(past), words(due, today, now));
    }

    private static String words(LocalDate due, LocalDate today, double now) {
        long days = ChronoUnit.DAYS.between(today, due);
        String share = Math.round(100 * now / DUE_AT) + " % of the interval has run";
        return days < 0 ? share + ", " + count(-days) + " past the due date" : share + ", " + count(days) + " left";
    }

    private static String count(long days) {
        return days == 1 ? "1 day" : days + " days";
    }

    private static String hatch(double past) {
        StringBuilder path = new StringBuilder();
        for (double x = DUE_AT + 1; x + 3 <= DUE_AT + past; x += 4) {
            path.append('M').append(round(x)).append(" 11l3 -6");
        }
        return path.toString();
    }

    private static double round(double value) {
        return Math.round(value * 10) / 10.0;
    }
}
