package app.ramkeeper.web.print;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.TestDatabase;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.StringReader;
import java.math.BigDecimal;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.xml.sax.InputSource;

/** Papers can be read by people, programs and archives. */
@SpringBootTest
@AutoConfigureMockMvc
@Import(TestDatabase.class)
class PdfTests {

    @Autowired
    Pdf pdf;

    @Test
    void textCanBeSelectedWithMacronsAndDrawingsToo() throws IOException {
        try (PDDocument paper = Loader.loadPDF(sample("Māhina <script> & Sons"))) {
            PDFTextStripper reader = new PDFTextStripper();
            reader.setSortByPosition(true);
            String text = reader.getText(paper);

            assertThat(text)
                    .contains(
                            "Tēnā koe: Māhina <script> & Sons, Tue 24 Nov 2026",
                            "the first office after fifty fjords",
                            "Line 80",
                            "80.00",
                            "foot of the page");
            assertThat(paper.getNumberOfPages()).isGreaterThan(1);
            assertThat(text).contains("1 / " + paper.getNumberOfPages());
        }
    }

    @Test
    void isTaggedArchivableAndCarriesItsFonts() throws Exception {
        try (PDDocument paper = Loader.loadPDF(sample("Anybody"))) {
            String metadata = new String(
                    paper.getDocumentCatalog().getMetadata().toByteArray(), java.nio.charset.StandardCharsets.UTF_8);

            assertThat(metadata).contains("pdfaid:part", ">2<", "pdfaid:conformance");
            DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new InputSource(new StringReader(metadata)));
            assertThat(paper.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
            assertThat(paper.getDocumentCatalog().getStructureTreeRoot()).isNotNull();
            assertThat(paper.getDocumentCatalog().getLanguage()).isEqualTo("en");
            assertThat(paper.getDocumentCatalog().getOutputIntents()).hasSize(1);
            assertThat(paper.getDocumentInformation().getTitle()).isEqualTo("A sample");
            for (var name : paper.getPage(0).getResources().getFontNames()) {
                PDFont font = paper.getPage(0).getResources().getFont(name);
                assertThat(font.isEmbedded()).as(font.getName()).isTrue();
            }
        }
    }

    @Test
    @DisplayName(
            "FLT-32 a paper from hard content is whole, readable and in time and fetches nothing; a letter its fonts lack is a #")
    void flt32HardContent() throws IOException {
        String line = "Reading %d: <b>kept</b> & O’Brien’s Māhina ½ \uD83D\uDC11 مزرعة כבשים end%d\n";
        StringBuilder note = new StringBuilder();
        for (int i = 0; note.length() < 50_000; i++) {
            note.append(line.formatted(i, i));
        }
        AtomicInteger asked = new AtomicInteger();
        HttpServer outside = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        outside.createContext("/", exchange -> {
            asked.incrementAndGet();
            exchange.sendResponseHeaders(404, -1);
            exchange.close();
        });
        outside.start();
        try {
            long from = System.nanoTime();
            byte[] bytes = pdf.make(
                    "print/hard",
                    Map.of(
                            "note",
                            note.toString(),
                            "outside",
                            "http://127.0.0.1:" + outside.getAddress().getPort() + "/gate.jpg",
                            "gone",
                            Path.of("target", "no-such-photo.jpg").toUri().toString()));

            assertThat(Duration.ofNanos(System.nanoTime() - from)).isLessThan(Duration.ofSeconds(20));
            assertThat(bytes.length).isLessThan(1_000_000);
            assertThat(asked).hasValue(0);
            assertThat(Standard.broken(bytes)).isEmpty();
            try (PDDocument paper = Loader.loadPDF(bytes)) {
                String text = new PDFTextStripper().getText(paper).replaceAll("\\s+", " ");
                for (int i = 0; note.indexOf("end" + i + "\n") >= 0; i++) {
                    assertThat(text)
                            .contains(
                                    "Reading " + i + ": <b>kept</b> & O’Brien’s Māhina ½ # ##### ##### end" + i + " ");
                }
                assertThat(text).contains("behind the missing pictures");
            }
        } finally {
            outside.stop(0);
        }
    }

    @Test
    void meetsTheStandards() throws IOException {
        assertThat(Standard.broken(sample("Anybody"))).isEmpty();
    }

    private byte[] sample(String name) throws IOException {
        byte[] bytes = pdf.make(
                "print/sample",
                Map.of("title", "A sample", "name", name, "day", LocalDate.of(2026, 11, 24), "price", BigDecimal.ONE));
        Files.write(Path.of("target", "sample.pdf"), bytes);
        return bytes;
    }
}
