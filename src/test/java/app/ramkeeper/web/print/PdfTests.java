package app.ramkeeper.web.print;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.TestDatabase;
import java.io.ByteArrayInputStream;
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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;
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

    /** Checked by the rules of veraPDF, which know the standards (ISO 19005-2 level A, ISO 14289-1) better than we do. */
    @ParameterizedTest
    @EnumSource(
            value = PDFAFlavour.class,
            names = {"PDFA_2_A", "PDFUA_1"})
    void meetsTheStandard(PDFAFlavour standard) throws Exception {
        VeraGreenfieldFoundryProvider.initialise();
        try (PDFAParser paper =
                Foundries.defaultInstance().createParser(new ByteArrayInputStream(sample("Anybody")), standard)) {
            ValidationResult result =
                    Foundries.defaultInstance().createValidator(standard, false).validate(paper);

            assertThat(result.getTotalAssertions()).isGreaterThan(1000);
            assertThat(result.getTestAssertions().stream()
                            .filter(rule -> rule.getStatus() == TestAssertion.Status.FAILED)
                            .map(rule -> rule.getRuleId().getClause() + " " + rule.getMessage()))
                    .isEmpty();
        }
    }

    private byte[] sample(String name) throws IOException {
        byte[] bytes = pdf.make(
                "print/sample",
                Map.of("title", "A sample", "name", name, "day", LocalDate.of(2026, 11, 24), "price", BigDecimal.ONE));
        Files.write(Path.of("target", "sample.pdf"), bytes);
        return bytes;
    }
}
