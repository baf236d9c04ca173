package app.ramkeeper.web.print;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.TestDatabase;
import java.io.IOException;
import java.io.StringReader;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
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
