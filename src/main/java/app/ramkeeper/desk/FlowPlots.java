package app.ramkeeper.desk;

import app.ramkeeper.desk.InstallHistory.Measured;
import app.ramkeeper.desk.InstallHistory.Period;
import app.ramkeeper.shared.Unit;
import app.ramkeeper.web.Plot;
import app.ramkeeper.web.PlotAxis;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Draws delivered flow and efficiency over the years, each against the baseline of the configuration of its day. */
final class FlowPlots {

    private static final int WIDTH = 760;
    private static final int HEIGHT = 230;

    private final InstallHistory history;
    private final LocalDate today;

    FlowPlots(InstallHistory history, LocalDate today) {
        this.history = history;
        this.today = today;
    }

    /** Delivered flow in l/min; absent until two days were measured. */
    @Nullable
    Plot delivered() {
        return plot(
                "Delivered flow against the baseline of each configuration",
                "l/min",
                Measured::deliveredPerMinute,
                period -> period.baselineDelivered() == null
                        ? null
                        : Unit.LITRE_PER_MINUTE.fromSi(period.baselineDelivered()));
    }

    /** D'Aubuisson efficiency in percent. */
    @Nullable
    Plot efficiency() {
        return plot(
                "Efficiency q h / (Q H) against the baseline of each configuration",
                "%",
                measured -> percent(measured.efficiency()),
                period -> percent(period.baselineEfficiency()));
    }

    private @Nullable Plot plot(
            String title,
            String unit,
            Function<Measured, @Nullable Double> value,
            Function<Period, @Nullable Double> baseline) {
        List<Measured> rows = history.measured().stream()
                .filter(m -> m.comparable() && value.apply(m) != null)
                .toList();
        if (rows.size() < 2) {
            return null;
        }
        double high = rows.stream()
                .mapToDouble(m -> Objects.requireNonNull(value.apply(m)))
                .max()
                .orElse(1);
        double low = rows.stream()
                .mapToDouble(m -> Objects.requireNonNull(value.apply(m)))
                .min()
                .orElse(0);
        for (Period period : history.periods()) {
            Double level = baseline.apply(period);
            high = level == null ? high : Math.max(high, level);
        }
        PlotAxis x = PlotAxis.ofDays(rows.get(0).on(), today, Plot.LEFT, WIDTH - Plot.RIGHT);
        PlotAxis y = PlotAxis.ofNumbers(Math.min(low, high * 0.5), high, HEIGHT - Plot.BOTTOM, Plot.TOP, 4);
        List<Plot.Line> lines = new ArrayList<>(baselines(x, y, baseline));
        lines.add(new Plot.Line("series", path(rows, value, x, y), "measured"));
        return new Plot(title, WIDTH, HEIGHT, x, y, "", unit, lines, points(rows, value, x, y, unit));
    }

    private static String path(
            List<Measured> rows, Function<Measured, @Nullable Double> value, PlotAxis x, PlotAxis y) {
        return Plot.path(rows.stream()
                .map(m -> new double[] {x.at(m.on().toEpochDay()), y.at(Objects.requireNonNull(value.apply(m)))})
                .toList());
    }

    private static List<Plot.Point> points(
            List<Measured> rows, Function<Measured, @Nullable Double> value, PlotAxis x, PlotAxis y, String unit) {
        return rows.stream()
                .map(m -> new Plot.Point(
                        x.at(m.on().toEpochDay()),
                        y.at(Objects.requireNonNull(value.apply(m))),
                        "",
                        String.format(Locale.ROOT, "%s: %.3g %s", m.on(), value.apply(m), unit)))
                .toList();
    }

    /** One level stretch for each configuration that has a baseline. */
    private List<Plot.Line> baselines(PlotAxis x, PlotAxis y, Function<Period, @Nullable Double> baseline) {
        StringBuilder path = new StringBuilder();
        for (Period period : history.periods()) {
            Double level = baseline.apply(period);
            if (level != null) {
                double from = within(
                        x, period.from() == null ? x.from() : period.from().toEpochDay());
                double until = within(
                        x, period.until() == null ? x.to() : period.until().toEpochDay());
                path.append('M')
                        .append(x.at(from))
                        .append(' ')
                        .append(y.at(level))
                        .append('H')
                        .append(x.at(until));
            }
        }
        return path.isEmpty() ? List.of() : List.of(new Plot.Line("baseline", path.toString(), "baseline"));
    }

    private static double within(PlotAxis axis, double value) {
        return Math.max(axis.from(), Math.min(axis.to(), value));
    }

    private static @Nullable Double percent(@Nullable Double share) {
        return share == null ? null : 100 * share;
    }
}
