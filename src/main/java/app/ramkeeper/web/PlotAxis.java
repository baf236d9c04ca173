package app.ramkeeper.web;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * One axis: a range of values laid on a range of the drawing, with ticks at round values.
 *
 * @param from lowest value
 * @param to highest value
 * @param start where the lowest value stands in the drawing
 * @param end where the highest value stands
 * @param ticks what is written along it
 */
public record PlotAxis(double from, double to, double start, double end, List<Tick> ticks) {

    /** A mark along an axis. */
    public record Tick(double at, String label) {}

    /** An axis of numbers that covers the values, from zero if they come near it, with about so many ticks. */
    public static PlotAxis ofNumbers(double low, double high, double start, double end, int about) {
        double bottom = low > 0 && low < 0.6 * high ? 0 : low;
        double span = high > bottom ? high - bottom : Math.max(1e-9, Math.abs(high) * 0.1 + 1e-9);
        double step = roundStep(span / about);
        double first = Math.floor(bottom / step) * step;
        double last = Math.ceil((bottom + span) / step - 1e-9) * step;
        List<Tick> ticks = new ArrayList<>();
        PlotAxis bare = new PlotAxis(first, last, start, end, List.of());
        for (int i = 0; first + i * step <= last + step / 2; i++) {
            double value = first + i * step;
            ticks.add(new Tick(bare.at(value), label(value, step)));
        }
        return new PlotAxis(first, last, start, end, List.copyOf(ticks));
    }

    /** An axis of days with a tick at each new year, or each quarter if the span is short. */
    public static PlotAxis ofDays(LocalDate low, LocalDate high, double start, double end) {
        LocalDate last = high.isAfter(low) ? high : low.plusDays(1);
        boolean years = ChronoUnit.MONTHS.between(low, last) > 30;
        PlotAxis bare = new PlotAxis(low.toEpochDay(), last.toEpochDay(), start, end, List.of());
        List<Tick> ticks = new ArrayList<>();
        LocalDate day = years ? low.withDayOfYear(1) : low.withDayOfMonth(1);
        while (!day.isAfter(last)) {
            if (!day.isBefore(low)) {
                ticks.add(new Tick(bare.at(day.toEpochDay()), years ? "" + day.getYear() : monthOf(day)));
            }
            day = years ? day.plusYears(1) : day.plusMonths(3);
        }
        return new PlotAxis(bare.from, bare.to, start, end, List.copyOf(ticks));
    }

    /** Where a value stands in the drawing, to a tenth of a unit. */
    public double at(double value) {
        double share = to == from ? 0.5 : (value - from) / (to - from);
        return Math.round((start + share * (end - start)) * 10) / 10.0;
    }

    private static String monthOf(LocalDate day) {
        return String.format(Locale.UK, "%tb %tY", day, day);
    }

    private static String label(double value, double step) {
        int digits = Math.max(0, (int) -Math.floor(Math.log10(step) + 1e-9));
        return String.format(Locale.ROOT, "%." + digits + "f", value == 0 ? 0.0 : value);
    }

    private static double roundStep(double raw) {
        double power = Math.pow(10, Math.floor(Math.log10(raw)));
        double lead = raw / power;
        return power * (lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10);
    }
}
