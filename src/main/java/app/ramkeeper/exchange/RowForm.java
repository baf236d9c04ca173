package app.ramkeeper.exchange;

import app.ramkeeper.exchange.reading.Columns;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * One cell of a row that is mended.
 *
 * @param heading the file's own heading, with the column's letter
 * @param field what the column says, if it was chosen for something
 * @param problems what is wrong with it
 */
public record RowForm(String heading, @Nullable String field, String value, List<String> problems) {

    static List<RowForm> of(Import imported, StagedRow row, List<Field> fields) {
        Map<String, Integer> columns = columns(imported);
        List<RowForm> cells = new ArrayList<>();
        for (int i = 0; i < imported.headings().size(); i++) {
            int column = i;
            Field field = fields.stream()
                    .filter(f -> Integer.valueOf(column).equals(columns.get(f.code())))
                    .findFirst()
                    .orElse(null);
            List<String> problems = field == null
                    ? List.of()
                    : row.problems().stream()
                            .filter(p -> p.field().equals(field.code()))
                            .map(Problem::sentence)
                            .toList();
            String heading = imported.headings().get(i);
            cells.add(new RowForm(
                    Columns.letter(i) + (heading.isEmpty() ? "" : " “" + heading + "”"),
                    field == null ? null : field.label(),
                    row.cell(i),
                    problems));
        }
        return cells;
    }

    /** Problems that stand beside no cell of the file. */
    static List<String> general(Import imported, StagedRow row) {
        Map<String, Integer> columns = columns(imported);
        return row.problems().stream()
                .filter(problem -> !columns.containsKey(problem.field()))
                .map(Problem::sentence)
                .toList();
    }

    /** Where a field stands in the file: column C “Fall”; blank if no column was chosen for it. */
    public static String where(Import imported, String field) {
        Integer column = columns(imported).get(field);
        return column == null
                ? ""
                : "Column " + Columns.letter(column) + " “"
                        + imported.headings().get(column) + "”";
    }

    private static Map<String, Integer> columns(Import imported) {
        return imported.mapping() == null ? Map.of() : imported.mapping().columns();
    }
}
