package app.ramkeeper.exchange.reading;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;

/** A text table (RFC 4180 with any of the usual separators). */
final class TextFile implements TableFile {

    private static final Pattern LINE = Pattern.compile("line:? ?(\\d+)");

    private final Path file;
    private final Dialect dialect;
    private final Limits limits;

    TextFile(Path file, Dialect dialect, Limits limits) {
        this.file = file;
        this.dialect = dialect;
        this.limits = limits;
    }

    @Override
    public String words() {
        return dialect.words();
    }

    @Override
    public boolean ragged() {
        return true;
    }

    @Override
    public void read(Consumer<List<String>> heading, Consumer<Row> rows) throws IOException {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setDelimiter(dialect.separator())
                .setIgnoreEmptyLines(false)
                .get();
        try (Reader in = new ShortLines(Dialects.open(file, dialect));
                CSVParser parser = CSVParser.parse(in, format)) {
            read(parser, new Receiver(limits, heading, rows));
        } catch (IOException broken) {
            throw malformed(broken);
        } catch (UncheckedIOException broken) {
            throw malformed(broken.getCause());
        }
    }

    private void read(CSVParser parser, Receiver receiver) {
        Iterator<CSVRecord> records = parser.iterator();
        int line = 1;
        while (records.hasNext()) {
            CSVRecord row = records.next();
            receiver.accept(line, cells(line, row));
            line = (int) parser.getCurrentLineNumber() + 1;
        }
        receiver.finish();
    }

    private List<String> cells(int line, CSVRecord row) {
        limits.checkColumns(line, row.size());
        List<String> cells = new ArrayList<>(row.size());
        for (int i = 0; i < row.size(); i++) {
            limits.checkCell(line, i, row.get(i));
            cells.add(Cell.clean(line, i, row.get(i)));
        }
        return cells;
    }

    private static Unreadable malformed(@Nullable IOException broken) {
        String text = broken == null ? "" : String.valueOf(broken.getMessage());
        Matcher line = LINE.matcher(text);
        String where = line.find() ? "In line " + line.group(1) : "Somewhere";
        return text.contains("EOF")
                ? Unreadable.broken(where + " a quotation mark is opened that is never closed. Nothing was imported.")
                : Unreadable.broken(
                        where + " a quotation mark stands in the middle of a cell: double it or take it out."
                                + " Nothing was imported.");
    }
}
