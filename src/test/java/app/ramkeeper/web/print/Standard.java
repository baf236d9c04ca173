package app.ramkeeper.web.print;

import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.stream.Stream;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/** The rules of veraPDF, which know the standards (ISO 19005-2 level A, ISO 14289-1) better than we do. */
public final class Standard {

    private Standard() {}

    /** What a paper breaks of PDF/A-2a and of PDF/UA-1, in the validator's words. */
    public static List<String> broken(byte[] paper) {
        VeraGreenfieldFoundryProvider.initialise();
        return Stream.of(PDFAFlavour.PDFA_2_A, PDFAFlavour.PDFUA_1)
                .flatMap(standard -> broken(paper, standard))
                .toList();
    }

    private static Stream<String> broken(byte[] paper, PDFAFlavour standard) {
        try (PDFAParser parser = Foundries.defaultInstance().createParser(new ByteArrayInputStream(paper), standard)) {
            ValidationResult result =
                    Foundries.defaultInstance().createValidator(standard, false).validate(parser);
            return result.getTotalAssertions() < 1000
                    ? Stream.of("only " + result.getTotalAssertions() + " things of it were looked at")
                    : result.getTestAssertions().stream()
                            .filter(rule -> rule.getStatus() == TestAssertion.Status.FAILED)
                            .map(rule -> rule.getRuleId().getClause() + " " + rule.getMessage());
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }
}
