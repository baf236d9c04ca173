package app.ramkeeper.quotes.survey;

import app.ramkeeper.sizing.quantity.Uncertain;
import app.ramkeeper.sizing.source.FloatArea;
import app.ramkeeper.sizing.source.FlowMeasurement;
import app.ramkeeper.sizing.source.Readings;
import app.ramkeeper.visits.form.TypedForm;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Reads floats timed along a reach, and the soundings of its section. */
final class FloatReader {

    /** A reach is taped to some 1 %, a section sounded to some 10 %; judgement, no source. */
    private static final double TAPE_SHARE = 0.01, AREA_SHARE = 0.1;

    private static final int MOST = 100;
    private static final Pattern NUMBER = Pattern.compile("\\d{1,4}([.,]\\d{1,3})?");

    private final TypedForm form;
    private final Amounts amounts;

    FloatReader(TypedForm form) {
        this.form = form;
        this.amounts = new Amounts(form);
    }

    @Nullable
    FlowMeasurement measured() {
        double distance = amounts.needed("floatDistanceM", "the length of the reach", 1, 500, "m");
        double factor = amounts.or("floatFactor", FloatArea.USUAL_FACTOR.value(), "the velocity factor", 0.3, 1, "");
        List<Double> seconds = seconds();
        double area = area();
        if (form.error("floatDistanceM") != null
                || form.error("floatSeconds") != null
                || form.error("floatSection") != null) {
            return null;
        }
        return FloatArea.measure(
                Uncertain.relative(distance, TAPE_SHARE),
                new Readings(seconds),
                Uncertain.relative(area, AREA_SHARE),
                new Uncertain(factor, FloatArea.USUAL_FACTOR.standardUncertainty()));
    }

    private List<Double> seconds() {
        List<Double> seconds = numbers("floatSeconds", form.value("floatSeconds"));
        if (seconds.isEmpty()) {
            form.problem("floatSeconds", "Give the times of the floats in seconds, for example 48 52 50.");
        } else if (seconds.size() > MOST || seconds.stream().anyMatch(time -> time < 1 || time > 3600)) {
            form.problem(
                    "floatSeconds", "Each float takes from 1 to 3600 s, and %d floats are enough.".formatted(MOST));
        }
        return seconds;
    }

    /** Area of the section from lines of distance from the bank and depth. */
    private double area() {
        List<String> lines = form.value("floatSection")
                .lines()
                .filter(line -> !line.isBlank())
                .toList();
        if (lines.size() < 2 || lines.size() > MOST) {
            form.problem(
                    "floatSection",
                    "Give two soundings or more, a line each: distance from the bank and depth in metres, for example 0.5 0.2.");
            return 0;
        }
        double[] offsets = new double[lines.size()];
        double[] depths = new double[lines.size()];
        for (int i = 0; i < lines.size(); i++) {
            List<Double> pair = numbers("floatSection", lines.get(i));
            if (form.error("floatSection") != null) {
                return 0;
            }
            if (pair.size() != 2 || i > 0 && pair.get(0) <= offsets[i - 1]) {
                form.problem(
                        "floatSection",
                        "Line %d, “%s”: give the distance from the bank, further than the one before, and the depth."
                                .formatted(i + 1, shown(lines.get(i))));
                return 0;
            }
            offsets[i] = pair.get(0);
            depths[i] = pair.get(1);
        }
        double area = FloatArea.area(offsets, depths);
        if (area <= 0) {
            form.problem("floatSection", "All depths are zero: there is no water in this section.");
        }
        return area;
    }

    private List<Double> numbers(String field, String text) {
        List<Double> numbers = new ArrayList<>();
        for (String word : text.strip().split("[\\s;]+|,\\s+", -1)) {
            if (word.isEmpty()) {
                continue;
            }
            if (!NUMBER.matcher(word).matches()) {
                form.problem(
                        field,
                        "“%s” is no number. Put blanks between them, for example 48 52 50.".formatted(shown(word)));
                return numbers;
            }
            numbers.add(Double.parseDouble(word.replace(',', '.')));
        }
        return numbers;
    }

    private static String shown(String text) {
        return text.length() > 40 ? text.substring(0, 40) + "…" : text;
    }
}
