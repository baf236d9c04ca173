package app.ramkeeper.exchange.reading;

import java.util.List;
import java.util.function.Consumer;

/** Takes rows in order: the first that is not blank is the heading; blank ones are left out. */
final class Receiver {

    private final Limits limits;
    private final Consumer<List<String>> heading;
    private final Consumer<Row> rows;
    private boolean headed;
    private int count;

    Receiver(Limits limits, Consumer<List<String>> heading, Consumer<Row> rows) {
        this.limits = limits;
        this.heading = heading;
        this.rows = rows;
    }

    void accept(int line, List<String> cells) {
        Row row = new Row(line, cells);
        if (row.isBlank()) {
            return;
        }
        if (headed) {
            limits.checkRows(++count);
            rows.accept(row);
        } else {
            headed = true;
            heading.accept(cells);
        }
    }

    void finish() {
        if (!headed) {
            throw Unreadable.broken("The file is empty. Nothing was imported.");
        }
        if (count == 0) {
            throw Unreadable.broken("The file has a heading line but no rows under it. Nothing was imported.");
        }
    }
}
