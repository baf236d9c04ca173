package app.ramkeeper.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.servlet.mvc.method.annotation.StreamingResponseBody;

/** A table as a CSV download (RFC 4180, UTF-8 with BOM so that spreadsheets read accents). */
public final class CsvDownload {

    private static final MediaType CSV = MediaType.parseMediaType("text/csv;charset=UTF-8");

    private CsvDownload() {}

    /** Answers with the rows under a header line. */
    public static ResponseEntity<StreamingResponseBody> of(
            String fileName, List<String> header, Stream<? extends List<?>> rows) {
        StreamingResponseBody body = out -> {
            out.write(new byte[] {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF});
            var writer = new java.io.OutputStreamWriter(out, StandardCharsets.UTF_8);
            CSVPrinter printer = new CSVPrinter(writer, CSVFormat.RFC4180);
            printer.printRecord(header);
            try (rows) {
                rows.forEach(row -> print(printer, row));
            }
            printer.flush();
        };
        return ResponseEntity.ok()
                .contentType(CSV)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.attachment()
                                .filename(fileName, StandardCharsets.UTF_8)
                                .build()
                                .toString())
                .body(body);
    }

    /**
     * The cell as it leaves: text that a spreadsheet would take for a formula (it begins with = + - @, tab or line end)
     * gets an apostrophe in front; numbers stay numbers.
     */
    public static String cell(@Nullable Object value) {
        String text = value == null ? "" : value.toString();
        if (text.isEmpty() || value instanceof Number || "=+-@\t\r\n".indexOf(text.charAt(0)) < 0) {
            return text;
        }
        return "'" + text;
    }

    private static void print(CSVPrinter printer, List<?> row) {
        try {
            printer.printRecord(row.stream().map(CsvDownload::cell));
        } catch (IOException away) {
            throw new UncheckedIOException(away);
        }
    }
}
