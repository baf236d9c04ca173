package app.ramkeeper.quotes.price;

import java.io.IOException;
import java.io.StringReader;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;

/** The price list as a table: one line a thing and price. */
final class PriceCsv {

    static final List<String> HEADER = List.of(
            "code",
            "kind",
            "name",
            "unit",
            "model",
            "use",
            "material",
            "series",
            "outside_mm",
            "wall_mm",
            "class_bar",
            "sold_in_m",
            "litres",
            "rating_bar",
            "drinking_water",
            "from",
            "until",
            "price",
            "cost");
    static final int MOST_LINES = 5000;

    /** One line that was read. */
    record Row(int line, ThingForm thing, @Nullable PeriodForm price) {}

    /** What was read, and what is wrong by line. */
    record Read(List<Row> rows, List<String> problems) {}

    private final Map<String, UUID> models;
    private final List<String> problems = new ArrayList<>();
    private int line;

    private PriceCsv(Map<String, UUID> models) {
        this.models = models;
    }

    /** Reads a table; the separator is the one of comma, semicolon and tab that stands in the first line most. */
    static Read read(String text, Map<String, UUID> models) {
        return new PriceCsv(models).read(text.startsWith("\uFEFF") ? text.substring(1) : text);
    }

    private Read read(String text) {
        List<Row> rows = new ArrayList<>();
        try (CSVParser parser = CSVFormat.RFC4180
                .builder()
                .setDelimiter(separator(text))
                .setHeader()
                .setSkipHeaderRecord(true)
                .setIgnoreHeaderCase(true)
                .setTrim(true)
                .setIgnoreEmptyLines(true)
                .get()
                .parse(new StringReader(text))) {
            for (String needed : List.of("code", "kind", "name", "unit")) {
                if (parser.getHeaderNames().stream().noneMatch(needed::equalsIgnoreCase)) {
                    problems.add("The first line names no column \"" + needed + "\".");
                }
            }
            if (problems.isEmpty()) {
                for (CSVRecord cells : parser) {
                    line = (int) parser.getCurrentLineNumber();
                    if (rows.size() >= MOST_LINES) {
                        problems.add("More than " + MOST_LINES + " lines; please split the file.");
                        break;
                    }
                    rows.add(row(cells));
                }
            }
        } catch (IOException | java.io.UncheckedIOException | IllegalArgumentException broken) {
            problems.add("This is no table: line " + (line + 1) + " cannot be read.");
        }
        return new Read(rows, problems);
    }

    private Row row(CSVRecord cells) {
        PriceKind kind = read(cells, "kind", text -> PriceKind.valueOf(text.toUpperCase(Locale.ROOT)));
        String model = cell(cells, "model");
        UUID modelId = model == null ? null : models.get(model.toLowerCase(Locale.ROOT));
        if (model != null && modelId == null) {
            problems.add("Line " + line + ": there is no pump model \"" + model + "\".");
        }
        ThingForm thing = new ThingForm(
                cell(cells, "code"),
                kind,
                cell(cells, "name"),
                cell(cells, "unit"),
                modelId,
                read(cells, "use", text -> PipeUse.valueOf(text.toUpperCase(Locale.ROOT))),
                read(
                        cells,
                        "material",
                        text -> app.ramkeeper.sizing.pipe.PipeMaterial.valueOf(text.toUpperCase(Locale.ROOT))),
                cell(cells, "series"),
                number(cells, "outside_mm"),
                number(cells, "wall_mm"),
                number(cells, "class_bar"),
                number(cells, "sold_in_m"),
                number(cells, "litres"),
                number(cells, "rating_bar"),
                read(cells, "drinking_water", PriceCsv::yes),
                null);
        LocalDate from = read(cells, "from", LocalDate::parse);
        BigDecimal price = number(cells, "price");
        PeriodForm period = from == null && price == null
                ? null
                : new PeriodForm(from, read(cells, "until", LocalDate::parse), price, number(cells, "cost"));
        return new Row(line, thing, period);
    }

    private @Nullable BigDecimal number(CSVRecord cells, String column) {
        return read(cells, column, text -> {
            if (text.length() > 20) {
                throw new IllegalArgumentException("too long");
            }
            return new BigDecimal(text.replace(',', '.'));
        });
    }

    private <T> @Nullable T read(CSVRecord cells, String column, Function<String, T> reader) {
        String text = cell(cells, column);
        if (text == null) {
            return null;
        }
        try {
            return reader.apply(text);
        } catch (RuntimeException unreadable) {
            problems.add("Line " + line + ", " + column + ": \"" + shortened(text) + "\" cannot be read.");
            return null;
        }
    }

    private @Nullable String cell(CSVRecord cells, String column) {
        if (!cells.isMapped(column) || !cells.isSet(column)) {
            return null;
        }
        String raw = cells.get(column);
        // exports put an apostrophe before what a spreadsheet would take for a formula
        String plain = raw.length() > 1 && raw.charAt(0) == '\'' && "=+-@".indexOf(raw.charAt(1)) >= 0
                ? raw.substring(1)
                : raw;
        try {
            String clean = app.ramkeeper.shared.Text.clean(plain);
            return clean == null || clean.isEmpty() ? null : clean;
        } catch (IllegalArgumentException control) {
            problems.add("Line " + line + ", " + column + ": it holds a control character.");
            return null;
        }
    }

    private static Boolean yes(String text) {
        return switch (text.toLowerCase(Locale.ROOT)) {
            case "yes", "true", "1" -> true;
            case "no", "false", "0" -> false;
            default -> throw new IllegalArgumentException(text);
        };
    }

    private static String shortened(String text) {
        return text.length() <= 40 ? text : text.substring(0, 40) + "…";
    }

    private static char separator(String text) {
        String first = text.lines().findFirst().orElse("");
        char best = ',';
        for (char each : new char[] {';', '\t'}) {
            if (first.chars().filter(c -> c == each).count()
                    > first.chars().filter(c -> c == ',').count()) {
                best = each;
            }
        }
        return best;
    }
}
