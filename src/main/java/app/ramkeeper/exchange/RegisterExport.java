package app.ramkeeper.exchange;

import app.ramkeeper.identity.ForSetup;
import app.ramkeeper.web.CsvDownload;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.apache.poi.xssf.streaming.SXSSFCell;
import org.apache.poi.xssf.streaming.SXSSFRow;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Writes the register as a table that an import reads again without change. */
@Service
@ForSetup
public class RegisterExport {

    private final RegisterFields fields;
    private final RegisterRows rows;

    RegisterExport(RegisterFields fields, RegisterRows rows) {
        this.fields = fields;
        this.rows = rows;
    }

    /** Writes a text table (UTF-8 with byte order mark, commas); would-be formulas leave as text. */
    @Transactional(readOnly = true)
    public void csv(OutputStream out) throws IOException {
        Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
        writer.write('\uFEFF');
        CSVPrinter printer = new CSVPrinter(writer, CSVFormat.RFC4180);
        printer.printRecord(headings());
        each(cells -> print(printer, cells));
        printer.flush();
    }

    private static void print(CSVPrinter printer, List<? extends @Nullable Object> cells) {
        try {
            printer.printRecord(cells.stream().map(RegisterExport::cell));
        } catch (IOException away) {
            throw new UncheckedIOException(away);
        }
    }

    private static String cell(@Nullable Object value) {
        return value instanceof Double ? Parsed.plain(value) : CsvDownload.cell(value);
    }

    /** All rows in the order of the headings, handed over one by one. */
    private void each(Consumer<List<? extends @Nullable Object>> row) {
        List<Field> columns = columns();
        try (Stream<Map<String, Object>> all = rows.all()) {
            all.forEach(values -> {
                List<@Nullable Object> cells = new ArrayList<>();
                columns.forEach(field -> cells.add(values.get(field.code())));
                row.accept(cells);
            });
        }
    }

    private List<String> headings() {
        return columns().stream().map(Field::heading).toList();
    }

    /** Writes a workbook of one sheet; every text is a text cell, so none becomes a formula. */
    @Transactional(readOnly = true)
    public void xlsx(OutputStream out) throws IOException {
        try (SXSSFWorkbook book = new SXSSFWorkbook(100)) {
            SXSSFSheet sheet = book.createSheet("Register");
            fill(sheet.createRow(0), headings());
            each(cells -> fill(sheet.createRow(sheet.getLastRowNum() + 1), cells));
            book.write(out);
        }
    }

    private List<Field> columns() {
        return fields.all().stream()
                .filter(field -> !field.code().equals(RegisterFields.POSITION))
                .toList();
    }

    private static void fill(SXSSFRow row, List<? extends @Nullable Object> cells) {
        Iterator<? extends @Nullable Object> values = cells.iterator();
        for (int i = 0; values.hasNext(); i++) {
            Object value = values.next();
            SXSSFCell cell = row.createCell(i);
            if (value instanceof Double number) {
                cell.setCellValue(number);
            } else if (value != null) {
                cell.setCellValue(CsvDownload.cell(value));
            }
        }
    }
}
