package app.ramkeeper.field;

import app.ramkeeper.web.Plot;
import app.ramkeeper.web.PlotAxis;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Draws delivered flow by drive flow, with where the dry month ends, as the phone does. */
final class SettingsPlot {

    private static final int WIDTH = 520, HEIGHT = 180, TICKS = 5;

    private SettingsPlot() {}

    /** Empty if fewer than two settings were measured. */
    static Optional<Plot> of(PhoneVisit visit) {
        List<double[]> measured = Settings.measured(visit);
        if (measured.size() < 2) {
            return Optional.empty();
        }
        Optional<Double> dry = Settings.dryFlow(visit);
        double most = Math.max(highest(measured, 0), dry.orElse(0.0));
        PlotAxis x = PlotAxis.ofNumbers(0, most, Plot.LEFT, WIDTH - Plot.RIGHT, TICKS);
        PlotAxis y = PlotAxis.ofNumbers(0, highest(measured, 1), HEIGHT - Plot.BOTTOM, Plot.TOP, TICKS);
        List<Plot.Line> lines = new ArrayList<>();
        lines.add(new Plot.Line(
                "series",
                Plot.path(measured.stream()
                        .map(p -> new double[] {x.at(p[0]), y.at(p[1])})
                        .toList()),
                "delivered at the settings tried"));
        dry.ifPresent(flow -> lines.add(new Plot.Line(
                "series-2",
                Plot.path(List.of(new double[] {x.at(flow), y.start()}, new double[] {x.at(flow), y.end()})),
                "flow of the dry month")));
        return Optional.of(new Plot(
                "Delivered flow by drive flow, " + measured.size() + " settings",
                WIDTH,
                HEIGHT,
                x,
                y,
                "drive flow, l/min",
                "delivered, l/min",
                lines,
                List.of()));
    }

    private static double highest(List<double[]> points, int axis) {
        return points.stream().map(p -> p[axis]).max(Comparator.naturalOrder()).orElse(0.0);
    }
}
