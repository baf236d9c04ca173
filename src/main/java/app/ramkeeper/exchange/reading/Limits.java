package app.ramkeeper.exchange.reading;

/**
 * What a file may be at most.
 *
 * @param bytes size of the file
 * @param rows rows under the heading
 * @param columns columns of the heading
 * @param cell characters of one cell
 */
public record Limits(long bytes, int rows, int columns, int cell) {

    /** Characters of one physical line, above which no register's row can be meant. */
    static final int LINE = 500_000;

    public static final Limits DEFAULT = new Limits(16L << 20, 100_000, 200, 8_000);

    /** Refuses a file that is too large. */
    public void accept(long size) {
        if (size > bytes) {
            throw Unreadable.tooLarge("The file has %,d bytes; the limit is %d MB. Split it into several files."
                    .formatted(size, bytes >> 20));
        }
    }

    void checkRows(int count) {
        if (count > rows) {
            throw Unreadable.tooLarge(
                    "The file has more than %,d rows under its heading. Split it into several files.".formatted(rows));
        }
    }

    void checkColumns(int line, int count) {
        if (count > columns) {
            throw Unreadable.broken(
                    "Line %d has more than %d columns. Is this the right file, with the right separator?"
                            .formatted(line, columns));
        }
    }

    void checkCell(int line, int column, String text) {
        if (text.length() > cell) {
            throw Unreadable.broken(
                    "Line %d, column %s holds more than %,d characters. Perhaps a quotation mark is opened there and never closed."
                            .formatted(line, Columns.letter(column), cell));
        }
    }
}
