package app.ramkeeper.quotes.survey;

import app.ramkeeper.sizing.line.GroundPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/** A ground profile as people type it or paste it from a spreadsheet: a line a point, chainage and level. */
final class ProfileText {

    /** More say nothing about a line of pipe, and make the page slow. */
    static final int MOST_POINTS = 300;

    private static final Pattern BETWEEN = Pattern.compile("\\s*[;\\t]\\s*|\\s*,\\s+|\\s+");
    private static final Pattern NUMBER = Pattern.compile("[+-]?\\d{1,7}([.,]\\d{1,6})?");
    private static final Pattern WORDS = Pattern.compile(".*\\p{L}{2,}.*");

    private ProfileText() {}

    /** Why a profile cannot be read, in a sentence that names the line. */
    static final class Unreadable extends Exception {
        private static final long serialVersionUID = 1L;

        Unreadable(String sentence) {
            super(sentence);
        }

        String sentence() {
            return String.valueOf(getMessage());
        }
    }

    /**
     * Reads the points; the first is the pump, and chainages count from it. A heading line is passed over.
     *
     * @throws Unreadable if a line is not two numbers, the chainage does not rise, or there are too few or too many
     */
    static List<GroundPoint> read(String text) throws Unreadable {
        List<GroundPoint> points = new ArrayList<>();
        String[] lines = text.split("\n", -1);
        long given = text.lines().filter(line -> !line.isBlank()).count();
        if (given > MOST_POINTS) {
            throw new Unreadable("%,d points are more than the %d that fit. Leave out points on even ground."
                    .formatted(given, MOST_POINTS));
        }
        double start = 0;
        for (int i = 0; i < lines.length; i++) {
            String line = lines[i].strip();
            if (line.isEmpty() || points.isEmpty() && WORDS.matcher(line).matches()) {
                continue;
            }
            double[] pair = pair(line, i + 1);
            start = points.isEmpty() ? pair[0] : start;
            double chainage = pair[0] - start;
            if (!points.isEmpty() && chainage <= points.get(points.size() - 1).chainageM()) {
                throw new Unreadable(String.format(
                        Locale.ROOT,
                        "Line %d: the chainage %s m is not more than the one before, %s m. It must rise from the pump to the tank.",
                        i + 1,
                        shown(pair[0]),
                        shown(points.get(points.size() - 1).chainageM() + start)));
            }
            points.add(new GroundPoint(chainage, pair[1]));
        }
        if (points.size() < 2) {
            throw new Unreadable("A profile needs two points or more: the pump and the tank.");
        }
        return points;
    }

    private static double[] pair(String line, int number) throws Unreadable {
        String[] cells = BETWEEN.split(line);
        if (cells.length == 1 && line.chars().filter(c -> c == ',').count() == 1) {
            cells = line.split(",", -1);
        }
        if (cells.length != 2
                || !NUMBER.matcher(cells[0]).matches()
                || !NUMBER.matcher(cells[1]).matches()) {
            String shown = line.length() > 40 ? line.substring(0, 40) + "…" : line;
            throw new Unreadable("Line %d, “%s”: give two numbers, chainage and level in metres, for example 120 34.5."
                    .formatted(number, shown));
        }
        return new double[] {value(cells[0]), value(cells[1])};
    }

    private static double value(String cell) {
        return Double.parseDouble(cell.replace(',', '.'));
    }

    /** The same text form, a line a point. */
    static String write(List<GroundPoint> points) {
        StringBuilder text = new StringBuilder();
        for (GroundPoint point : points) {
            text.append(shown(point.chainageM()))
                    .append('\t')
                    .append(shown(point.levelM()))
                    .append('\n');
        }
        return text.toString().strip();
    }

    private static String shown(double value) {
        String digits = String.format(Locale.ROOT, "%.1f", value);
        return digits.endsWith(".0") ? digits.substring(0, digits.length() - 2) : digits;
    }
}
