package app.ramkeeper.quotes.design;

import app.ramkeeper.web.Plot;
import app.ramkeeper.web.PlotAxis;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/** The drawings of a design; each page that shows one has the same values in a table beside it. */
public final class Plots {

    private static final int WIDTH = 720;
    private static final int HEIGHT = 300;

    private Plots() {}

    /** Ground, head line and standing level along the delivery line, with the pipe class of each stretch. */
    public static Plot profile(List<ChosenDesign.ProfilePoint> points, List<ChosenDesign.PipeLine> delivery) {
        double end = points.get(points.size() - 1).chainageM();
        double low = points.stream()
                .mapToDouble(ChosenDesign.ProfilePoint::levelM)
                .min()
                .orElse(0);
        double high = points.stream()
                .mapToDouble(p -> Math.max(p.headM(), Math.max(p.staticM(), p.levelM())))
                .max()
                .orElse(1);
        PlotAxis x = x(0, end);
        PlotAxis y = y(Math.min(0, low), high);
        List<Plot.Line> lines = new ArrayList<>();
        for (int i = 0; i < delivery.size(); i++) {
            lines.add(stretch(points, delivery.get(i), i, x, y));
        }
        lines.add(line(
                "series-2",
                "Head line while running",
                points,
                ChosenDesign.ProfilePoint::chainageM,
                ChosenDesign.ProfilePoint::headM,
                x,
                y));
        lines.add(line(
                "baseline",
                "Standing level, line full",
                points,
                ChosenDesign.ProfilePoint::chainageM,
                ChosenDesign.ProfilePoint::staticM,
                x,
                y));
        return new Plot(
                "Ground profile with head line and standing level",
                WIDTH,
                HEIGHT,
                x,
                y,
                "from the pump, m",
                "above the pump, m",
                lines,
                List.of());
    }

    private static Plot.Line stretch(
            List<ChosenDesign.ProfilePoint> points, ChosenDesign.PipeLine pipe, int index, PlotAxis x, PlotAxis y) {
        List<double[]> path = points.stream()
                .filter(p -> p.chainageM() >= pipe.fromM() - 1e-6 && p.chainageM() <= pipe.toM() + 1e-6)
                .map(p -> new double[] {x.at(p.chainageM()), y.at(p.levelM())})
                .toList();
        String label = String.format(Locale.ROOT, "Ground, %s, %.0f to %.0f m", pipe.name(), pipe.fromM(), pipe.toM());
        return new Plot.Line("stretch stretch-" + index % 3, Plot.path(path), label);
    }

    /** Delivered and drive flow of one pump against the setting of its waste valve. */
    public static Plot valve(Curves curves) {
        PlotAxis x = x(
                curves.valve().get(0).closingMs(),
                curves.valve().get(curves.valve().size() - 1).closingMs());
        PlotAxis y = y(
                0,
                curves.valve().stream()
                        .mapToDouble(Curves.AtSetting::deliveredLMin)
                        .max()
                        .orElse(1));
        List<Curves.AtSetting> drowned =
                curves.valve().stream().filter(Curves.AtSetting::drowned).toList();
        List<Plot.Line> lines = new ArrayList<>();
        lines.add(line(
                "series-2",
                "With water enough",
                curves.valve(),
                Curves.AtSetting::closingMs,
                Curves.AtSetting::deliveredLMin,
                x,
                y));
        if (drowned.size() > 1) {
            lines.add(line(
                    "series",
                    "Within the dry month’s water",
                    drowned,
                    Curves.AtSetting::closingMs,
                    Curves.AtSetting::deliveredLMin,
                    x,
                    y));
        }
        List<Plot.Point> marks = curves.valve().stream()
                .map(at -> new Plot.Point(
                        x.at(at.closingMs()),
                        y.at(at.deliveredLMin()),
                        at.drowned() ? "" : "apart",
                        String.format(
                                Locale.ROOT,
                                "shuts at %.2f m/s: %.0f beats a minute, takes %.0f, delivers %.1f l/min",
                                at.closingMs(),
                                at.beats(),
                                at.driveLMin(),
                                at.deliveredLMin())))
                .toList();
        return new Plot(
                "Delivered flow of one pump against its valve setting",
                WIDTH,
                HEIGHT,
                x,
                y,
                "velocity at which the waste valve shuts, m/s",
                "delivered by one pump, l/min",
                lines,
                marks);
    }

    /** Delivered a day against what the source gives, with the dry month and the day of the survey marked. */
    public static Plot source(Curves curves, double demandLDay) {
        double most = curves.source().get(curves.source().size() - 1).sourceLMin();
        PlotAxis x = x(0, most);
        PlotAxis y = y(
                0,
                Math.max(
                        demandLDay,
                        curves.source().stream()
                                .mapToDouble(Curves.AtSource::deliveredLDay)
                                .max()
                                .orElse(1)));
        List<Plot.Line> lines = new ArrayList<>();
        lines.add(line(
                "series",
                "Delivered",
                curves.source(),
                Curves.AtSource::sourceLMin,
                Curves.AtSource::deliveredLDay,
                x,
                y));
        lines.add(across("baseline", "Wanted", 0, most, demandLDay, x, y));
        lines.add(upright("series-2", "Dry month", curves.dryLMin(), x, y));
        lines.add(upright("grid-strong", "Day of the survey", curves.measuredLMin(), x, y));
        List<Plot.Point> marks = curves.source().stream()
                .map(at -> new Plot.Point(
                        x.at(at.sourceLMin()),
                        y.at(at.deliveredLDay()),
                        "",
                        String.format(
                                Locale.ROOT,
                                "%.0f l/min: %d running, %.0f l/day",
                                at.sourceLMin(),
                                at.running(),
                                at.deliveredLDay())))
                .toList();
        return new Plot(
                "Delivered a day against the source",
                WIDTH,
                HEIGHT,
                x,
                y,
                "source, less what must stay, l/min",
                "delivered, l/day",
                lines,
                marks);
    }

    /** The designs by cost and by the range of what they deliver in a dry month. */
    static Plot options(Options options, String currency) {
        double dearest =
                options.worked().stream().mapToDouble(Worked::cost).max().orElse(1);
        double demand = options.survey().demand().litresPerDay();
        double most = Math.max(
                demand, options.worked().stream().mapToDouble(Worked::p90).max().orElse(1));
        PlotAxis x = x(0, dearest);
        PlotAxis y = y(0, most);
        List<Plot.Line> lines = new ArrayList<>();
        lines.add(across("baseline", "Wanted", 0, x.to(), demand, x, y));
        List<Plot.Point> marks = new ArrayList<>();
        for (int i = 0; i < options.worked().size(); i++) {
            Worked one = options.worked().get(i);
            double at = x.at(one.cost());
            String path = "M" + at + " " + y.at(one.p10()) + "V" + y.at(one.p90());
            lines.add(new Plot.Line("series", path, i == 0 ? "From nine in ten to one in ten dry months" : ""));
            marks.add(new Plot.Point(
                    at,
                    y.at(one.p50()),
                    "",
                    String.format(
                            Locale.ROOT,
                            "Design %d, %s: %.0f to %.0f l/day for %s %.0f",
                            i + 1,
                            one.pumpName(),
                            one.p10(),
                            one.p90(),
                            currency,
                            one.cost())));
        }
        return new Plot(
                "Designs by cost and by what they deliver in a dry month",
                WIDTH,
                HEIGHT,
                x,
                y,
                "pumps and pipes, " + currency,
                "delivered in a dry month, l/day",
                lines,
                marks);
    }

    private static PlotAxis x(double low, double high) {
        return PlotAxis.ofNumbers(low, high, Plot.LEFT, WIDTH - Plot.RIGHT, 8);
    }

    private static PlotAxis y(double low, double high) {
        return PlotAxis.ofNumbers(low, high, HEIGHT - Plot.BOTTOM, Plot.TOP, 5);
    }

    private static <T> Plot.Line line(
            String style,
            String label,
            List<T> rows,
            ToDoubleFunction<T> at,
            ToDoubleFunction<T> value,
            PlotAxis x,
            PlotAxis y) {
        Stream<double[]> path =
                rows.stream().map(row -> new double[] {x.at(at.applyAsDouble(row)), y.at(value.applyAsDouble(row))});
        return new Plot.Line(style, Plot.path(path.toList()), label);
    }

    private static Plot.Line across(
            String style, String label, double from, double to, double value, PlotAxis x, PlotAxis y) {
        return new Plot.Line(style, "M" + x.at(from) + " " + y.at(value) + "H" + x.at(to), label);
    }

    private static Plot.Line upright(String style, String label, double value, PlotAxis x, PlotAxis y) {
        return new Plot.Line(style, "M" + x.at(value) + " " + y.start() + "V" + y.end(), label);
    }
}
