package app.ramkeeper.exchange.reading;

import app.ramkeeper.shared.Text;
import java.text.Normalizer;

/** One cell's text made fit to keep. */
public final class Cell {

    private Cell() {}

    /**
     * Cleans a cell; the apostrophe that exports put before a would-be formula is taken off again.
     *
     * @throws Unreadable naming line and column if it holds a control character
     */
    public static String clean(int line, int column, String raw) {
        try {
            String text = String.valueOf(Text.clean(raw));
            boolean guarded = text.length() > 1 && text.charAt(0) == '\'' && "=+-@\t\r".indexOf(text.charAt(1)) >= 0;
            return Normalizer.normalize(guarded ? text.substring(1) : text, Normalizer.Form.NFC);
        } catch (IllegalArgumentException control) {
            throw Unreadable.broken("Line %d, column %s: %s Nothing was imported."
                    .formatted(line, Columns.letter(column), control.getMessage()));
        }
    }
}
