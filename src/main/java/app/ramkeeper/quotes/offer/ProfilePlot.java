package app.ramkeeper.quotes.offer;

import app.ramkeeper.quotes.design.ChosenDesign;
import app.ramkeeper.quotes.design.ChosenDesign.ProfilePoint;
import app.ramkeeper.web.Plot;
import app.ramkeeper.web.PlotAxis;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** The delivery line over its length: ground, static level and head line. */
final class ProfilePlot {

    private static final int WIDTH = 640;
    private static final int HEIGHT = 220;

    private ProfilePlot() {}

    static @Nullable Plot of(ChosenDesign design) {
        List<ProfilePoint> points = design.profile();
        if (points.size() < 2) {
            return null;
        }
        double far = points.get(points.size() - 1).chainageM();
        double low = points.stream().mapToDouble(ProfilePoint::levelM).min().orElse(0);
        double high = points.stream()
                .mapToDouble(p -> Math.max(p.levelM(), Math.max(p.staticM(), p.headM())))
                .max()
                .orElse(1);
        PlotAxis x = PlotAxis.ofNumbers(0, far, Plot.LEFT, WIDTH - Plot.RIGHT, 6);
        PlotAxis y = PlotAxis.ofNumbers(Math.min(0, low), high, HEIGHT - Plot.BOTTOM, Plot.TOP, 5);
        return new Plot(
                "Levels along the delivery line: ground, static level, head line",
                WIDTH,
                HEIGHT,
                x,
                y,
                "m along the line",
                "m above the pump",
                List.of(
                        new Plot.Line("series", path(points, ProfilePoint::levelM, x, y), "ground"),
                        new Plot.Line("baseline", path(points, ProfilePoint::staticM, x, y), "static level"),
                        new Plot.Line("series-2", path(points, ProfilePoint::headM, x, y), "head line")),
                List.of());
    }

    private static String path(
            List<ProfilePoint> points, ToDoubleFunction<ProfilePoint> level, PlotAxis x, PlotAxis y) {
        return Plot.path(points.stream()
                .map(p -> new double[] {x.at(p.chainageM()), y.at(level.applyAsDouble(p))})
                .toList());
    }
}
