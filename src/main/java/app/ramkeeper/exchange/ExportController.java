package app.ramkeeper.exchange;

import app.ramkeeper.identity.ForSetup;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.servlet.mvc.method.annotation.StreamingResponseBody;

/** The register as a file. It is written to the end before the first byte leaves, so a failure is never half a file. */
@Controller
@ForSetup
class ExportController {

    private final RegisterExport export;

    ExportController(RegisterExport export) {
        this.export = export;
    }

    /** What writes a table. */
    private interface Table {
        void write(OutputStream out) throws IOException;
    }

    @GetMapping("/exports/register.csv")
    ResponseEntity<StreamingResponseBody> csv() throws IOException {
        return download("register.csv", "text/csv;charset=UTF-8", export::csv);
    }

    @GetMapping("/exports/register.xlsx")
    ResponseEntity<StreamingResponseBody> xlsx() throws IOException {
        return download(
                "register.xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", export::xlsx);
    }

    private static ResponseEntity<StreamingResponseBody> download(String name, String type, Table table)
            throws IOException {
        Path made = Files.createTempFile("ramkeeper-export", ".tmp");
        try (OutputStream out = Files.newOutputStream(made)) {
            table.write(out);
        } catch (IOException | RuntimeException failure) {
            Files.deleteIfExists(made);
            throw failure;
        }
        StreamingResponseBody body = out -> {
            try {
                Files.copy(made, out);
            } finally {
                Files.deleteIfExists(made);
            }
        };
        return ResponseEntity.ok()
                .contentType(MediaType.parseMediaType(type))
                .contentLength(Files.size(made))
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + name + "\"")
                .body(body);
    }
}
