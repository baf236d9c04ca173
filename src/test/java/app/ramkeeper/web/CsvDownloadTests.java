package app.ramkeeper.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.http.HttpHeaders;

class CsvDownloadTests {

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+64 3", "-cmd", "@sum", "\tx", "\rx"})
    @DisplayName("FLT-22 text that a spreadsheet takes for a formula leaves as text")
    void guardsFormulas(String text) {
        assertThat(CsvDownload.cell(text)).isEqualTo("'" + text);
    }

    @Test
    @DisplayName("FLT-22 numbers stay numbers")
    void keepsNumbers() {
        assertThat(CsvDownload.cell(new BigDecimal("-5"))).isEqualTo("-5");
        assertThat(CsvDownload.cell("Ridge Farm")).isEqualTo("Ridge Farm");
        assertThat(CsvDownload.cell(null)).isEmpty();
    }

    @Test
    @DisplayName("SEC-42 encodes the file's name and quotes cells")
    void writesATable() throws IOException {
        var answer =
                CsvDownload.of("due \"list\" Ōhau.csv", List.of("site", "days"), Stream.of(List.of("a, \"b\"", -3)));
        var out = new ByteArrayOutputStream();
        Objects.requireNonNull(answer.getBody()).writeTo(out);

        assertThat(out.toString(StandardCharsets.UTF_8)).isEqualTo("\uFEFFsite,days\r\n\"a, \"\"b\"\"\",-3\r\n");
        assertThat(answer.getHeaders().getFirst(HttpHeaders.CONTENT_DISPOSITION))
                .startsWith("attachment; ")
                .contains("filename*=UTF-8''due%20%22list%22%20%C5%8Chau.csv");
    }
}
