package app.ramkeeper.exchange;

import java.util.List;
import java.util.Map;
import java.util.UUID;

/** A row of an import with what is known of it. */
public record StagedRow(
        int line, List<String> cells, RowState state, List<Problem> problems, Map<String, List<UUID>> made) {

    /** The cell in a column; blank where the row is shorter. */
    public String cell(int column) {
        return column < cells.size() ? cells.get(column) : "";
    }
}
