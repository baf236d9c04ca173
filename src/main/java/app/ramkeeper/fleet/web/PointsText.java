package app.ramkeeper.fleet.web;

import app.ramkeeper.fleet.AsBuiltPoint;
import app.ramkeeper.fleet.PointKind;
import app.ramkeeper.fleet.Position;
import app.ramkeeper.fleet.PositionText;
import app.ramkeeper.shared.Conflict;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Points of a laid line as text, a line each: how far along, level, what lies there, position, note; parted by semicolons
 * or, as a spreadsheet gives them, tabs.
 */
final class PointsText {

    /** More than any line has that somebody walked. */
    static final int MOST = 10_000;

    private static final double LONGEST_M = 50_000, LOWEST_M = -1_000, HIGHEST_M = 6_000;
    private static final int LONGEST_NOTE = 1_000;

    /** What people call each kind, to read and to write it. */
    private final Map<PointKind, String> words;

    PointsText(Map<PointKind, String> words) {
        this.words = words;
    }

    String write(List<AsBuiltPoint> points) {
        return points.stream().map(this::line).collect(Collectors.joining("\n"));
    }

    private String line(AsBuiltPoint point) {
        Position position = point.position();
        String line = String.join(
                "; ",
                number(point.chainageM()),
                number(point.levelM()),
                words.getOrDefault(point.kind(), point.kind().name()),
                position == null
                        ? ""
                        : String.format(Locale.ROOT, "%.6f %.6f", position.latitude(), position.longitude()),
                point.note() == null ? "" : point.note());
        return line.replaceFirst("(; *)+$", "");
    }

    private static String number(@Nullable Double value) {
        return value == null
                ? ""
                : BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }

    /**
     * Reads the points; empty lines say nothing.
     *
     * @throws Conflict that names the line and what is wrong with it
     */
    List<AsBuiltPoint> read(String text) {
        List<AsBuiltPoint> points = new ArrayList<>();
        double before = 0;
        int row = 0;
        for (String line : text.split("\\R", -1)) {
            row++;
            if (line.isBlank()) {
                continue;
            }
            if (points.size() == MOST) {
                throw new Conflict("A line keeps at most 10 000 points.");
            }
            AsBuiltPoint point = point(row, line);
            if (point.chainageM() != null) {
                if (point.chainageM() < before) {
                    throw wrong(row, "lies " + number(point.chainageM()) + " m along, before the one above it");
                }
                before = point.chainageM();
            }
            points.add(point);
        }
        return points;
    }

    private AsBuiltPoint point(int row, String line) {
        String[] cells = line.split(line.indexOf('\t') >= 0 ? "\t" : ";", 5);
        String note = cell(cells, 4);
        if (note.length() > LONGEST_NOTE) {
            throw wrong(row, "has a note of more than 1000 letters");
        }
        return new AsBuiltPoint(
                kind(row, cell(cells, 2)),
                metres(row, cell(cells, 0), "how far along", 0, LONGEST_M),
                metres(row, cell(cells, 1), "the level", LOWEST_M, HIGHEST_M),
                position(row, cell(cells, 3)),
                note.isEmpty() ? null : note);
    }

    private static String cell(String[] cells, int at) {
        return at < cells.length ? cells[at].strip() : "";
    }

    private PointKind kind(int row, String word) {
        if (word.isEmpty()) {
            return PointKind.POINT;
        }
        return Arrays.stream(PointKind.values())
                .filter(kind -> word.equalsIgnoreCase(words.get(kind)) || word.equalsIgnoreCase(kind.name()))
                .findFirst()
                .orElseThrow(() -> wrong(
                        row, "says \"" + word + "\"; what lies there is one of " + String.join(", ", words.values())));
    }

    private static @Nullable Double metres(int row, String typed, String what, double low, double high) {
        if (typed.isEmpty()) {
            return null;
        }
        try {
            double value = Double.parseDouble(typed.replace(',', '.'));
            if (value >= low && value <= high) {
                return value;
            }
        } catch (NumberFormatException notANumber) {
            // said below, as for a number out of range
        }
        throw wrong(
                row,
                "says \"" + typed + "\" for " + what + ": metres from " + (int) low + " to " + (int) high
                        + " are wanted");
    }

    private static @Nullable Position position(int row, String typed) {
        try {
            return typed.isEmpty() ? null : PositionText.parse(typed);
        } catch (IllegalArgumentException unreadable) {
            throw wrong(row, "has a position that cannot be read: " + unreadable.getMessage());
        }
    }

    private static Conflict wrong(int row, String what) {
        return new Conflict("Line " + row + " " + what + ".");
    }
}
