package app.ramkeeper.exchange;

import app.ramkeeper.exchange.reading.Dates;
import app.ramkeeper.exchange.reading.Quantities;
import app.ramkeeper.shared.Measured;
import app.ramkeeper.shared.Unit;
import app.ramkeeper.web.Say;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Reads the cells of one import's rows as its mapping says, without looking into the register. */
final class CellReader {

    private static final LocalDate EARLIEST = LocalDate.of(1900, 1, 1);
    private static final Set<String> UNKNOWN =
            Set.of("unknown", "not known", "n/k", "nk", "?", "unsure", "don't know", "dont know", "na", "n/a");

    private final Import imported;
    private final Map<String, Integer> columns;
    private final List<Field> fields;
    private final LocalDate today;

    CellReader(Import imported, List<Field> fields, LocalDate today) {
        this.imported = imported;
        this.columns =
                imported.mapping() == null ? Map.of() : imported.mapping().columns();
        this.fields = fields;
        this.today = today;
    }

    Parsed read(StagedRow row) {
        Parsed parsed = new Parsed(row.line());
        checkWidth(row, parsed);
        for (Field field : fields) {
            Integer column = columns.get(field.code());
            String cell = column == null ? "" : row.cell(column);
            if (column != null && !cell.isEmpty()) {
                read(field, cell, imported.headings().get(column), parsed);
            } else if (field.required()) {
                parsed.problem(field.code(), field.label() + " is missing.");
            }
        }
        return parsed;
    }

    /** A row of a text table with more or fewer cells than headings has slipped somewhere. */
    private void checkWidth(StagedRow row, Parsed parsed) {
        int wanted = imported.headings().size();
        int extra = 0;
        for (int i = wanted; i < row.cells().size(); i++) {
            extra += row.cells().get(i).isEmpty() ? 0 : 1;
        }
        boolean text = imported.howRead().startsWith("text");
        if (extra > 0 || (text && row.cells().size() < wanted)) {
            parsed.problem(
                    "",
                    "This row has %d cells, the heading has %d: a separator is missing or too many. Look whether each cell stands under its heading."
                            .formatted(row.cells().size(), wanted));
        }
    }

    private void read(Field field, String cell, String heading, Parsed parsed) {
        switch (field.type()) {
            case TEXT -> text(field, cell, parsed);
            case DATE, DATE_OR_UNKNOWN -> date(field, cell, parsed);
            case NUMBER -> number(field, cell, heading, parsed);
            case CHOICE -> choice(field, cell, parsed);
        }
    }

    private static void text(Field field, String cell, Parsed parsed) {
        if (cell.length() > field.most()) {
            parsed.problem(
                    field.code(),
                    "%s may have %,.0f characters; this one has %,d."
                            .formatted(field.label(), field.most(), cell.length()));
        } else {
            parsed.put(field.code(), cell);
        }
    }

    private void date(Field field, String cell, Parsed parsed) {
        if (field.type() == Field.Type.DATE_OR_UNKNOWN && UNKNOWN.contains(cell.toLowerCase(Locale.ROOT))) {
            parsed.put(field.code(), Parsed.UNKNOWN);
            return;
        }
        Optional<LocalDate> date = Dates.read(cell, imported.order(), today);
        if (date.isEmpty()) {
            parsed.problem(
                    field.code(),
                    "“" + cell + "” is not a day that can be read. Write it like 2024-03-15 or 15 Mar 2024.");
        } else if (date.get().isAfter(today)) {
            parsed.problem(field.code(), field.label() + " " + Say.day(date.get()) + " lies in the future.");
        } else if (date.get().isBefore(EARLIEST)) {
            parsed.problem(field.code(), field.label() + " " + Say.day(date.get()) + " lies before 1900.");
        } else {
            parsed.put(field.code(), date.get());
        }
    }

    private void number(Field field, String cell, String heading, Parsed parsed) {
        Unit unit = field.unit() == null ? Unit.METRE : field.unit();
        Optional<Measured> read = Quantities.read(
                cell, imported.mark(), Quantities.ofHeading(heading, unit).orElse(unit));
        if (read.isEmpty()) {
            parsed.problem(field.code(), "“" + cell + "” is not a number in " + unit.symbol() + ".");
            return;
        }
        Measured measured = read.get();
        double value = measured.unit() == unit ? measured.value().doubleValue() : unit.fromSi(measured.si());
        if (value < field.least() || value > field.most()) {
            parsed.problem(
                    field.code(),
                    "%s must lie between %s and %s %s; this says %s."
                            .formatted(
                                    field.label(),
                                    Parsed.plain(field.least()),
                                    Parsed.plain(field.most()),
                                    unit.symbol(),
                                    measured));
        } else {
            parsed.put(field.code(), value);
            parsed.put(field.code(), measured);
        }
    }

    private static void choice(Field field, String cell, Parsed parsed) {
        String code = field.choices().get(cell.toLowerCase(Locale.ROOT).strip());
        if (code == null) {
            parsed.problem(
                    field.code(),
                    "“" + cell + "” is not known here. Write one of: "
                            + String.join(", ", new TreeSet<>(field.choices().keySet())) + ".");
        } else {
            parsed.put(field.code(), code);
        }
    }
}
