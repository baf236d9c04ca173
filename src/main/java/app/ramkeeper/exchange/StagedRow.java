package app.ramkeeper.exchange;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** A row of an import with what is known of it. */
public record StagedRow(
        int line, List<String> cells, RowState state, List<Problem> problems, Map<String, List<UUID>> made) {

    /** The same with its problems in the order of the columns, those of no column first. */
    StagedRow byColumn(Map<String, Integer> columns) {
        List<Problem> sorted = problems.stream()
                .sorted(Comparator.comparingInt(problem -> columns.getOrDefault(problem.field(), -1)))
                .toList();
        return new StagedRow(line, cells, state, sorted, made);
    }

    /** The cell in a column; blank where the row is shorter. */
    public String cell(int column) {
        return column < cells.size() ? cells.get(column) : "";
    }
}
