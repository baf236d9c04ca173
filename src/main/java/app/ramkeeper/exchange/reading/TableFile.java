package app.ramkeeper.exchange.reading;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;

/** A table in a file, read once from top to bottom. */
public interface TableFile {

    /**
     * Reads the heading, then hands over each row that is not blank.
     *
     * @throws Unreadable if the file breaks off, is malformed or goes beyond the limits
     */
    void read(Consumer<List<String>> heading, Consumer<Row> rows) throws IOException;

    /** How the file is read, in words. */
    String words();

    /** True if a short row means a slip; spreadsheets simply leave out blank cells at the end. */
    boolean ragged();

    /** Opens a file whose kind has been recognised. */
    static TableFile of(Path file, FileKind kind, Reading reading, Limits limits) throws IOException {
        return kind == FileKind.XLSX
                ? new XlsxFile(file, limits)
                : new TextFile(file, Dialects.recognise(file, reading.charset(), reading.separator()), limits);
    }
}
