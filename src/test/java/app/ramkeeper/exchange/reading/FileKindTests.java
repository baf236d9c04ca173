package app.ramkeeper.exchange.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayName("SEC-40 name, declared type and content must agree")
class FileKindTests {

    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource({
        "register.csv., 'a,b', text/csv",
        "register.csv.html, 'a,b', text/csv",
        "register.csv, '<html><body>', text/csv",
        "register.csv, '%PDF-1.7', text/csv",
        "register.csv, '\u0089PNG\r\n', text/csv",
        "register.csv, 'a,b', text/html",
        "register.csv, 'PK\u0003\u0004', text/csv",
        "register.xlsx, '\u0089PNG\r\n', ''",
        "register.xlsx, 'a,b', ''",
        "register.xlsx, 'PK\u0003\u0004', image/png",
        "register.xls, '\u00D0\u00CF\u0011\u00E0', application/vnd.ms-excel",
        "register.exe, 'MZ\u0090', ''",
        "'', 'a,b', text/csv"
    })
    void refuses(String name, String content, String type) throws IOException {
        Path file = Tables.file(folder, "x", content.getBytes(StandardCharsets.ISO_8859_1));

        assertThatExceptionOfType(Unreadable.class)
                .isThrownBy(() -> FileKind.of(file, name, type))
                .satisfies(refused -> assertThat(refused.reason()).isEqualTo(Unreadable.Reason.OTHER_KIND));
    }

    @Test
    void acceptsUpperCaseAndWhatBrowsersDeclareForCsv() throws IOException {
        Path file = Tables.file(folder, "x", "a;b\n1;2\n".getBytes(StandardCharsets.UTF_8));

        assertThat(FileKind.of(file, "REGISTER.CSV", "application/vnd.ms-excel"))
                .isEqualTo(FileKind.TEXT);
    }
}
