package app.ramkeeper.exchange.reading;

import java.util.List;

/**
 * One row as it stands in the file.
 *
 * @param line the line (or spreadsheet row) where it begins, counted from 1
 * @param cells the cells' text, cleaned
 */
public record Row(int line, List<String> cells) {

    public boolean isBlank() {
        return cells.stream().allMatch(String::isEmpty);
    }
}
