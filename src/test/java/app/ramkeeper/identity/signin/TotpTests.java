package app.ramkeeper.identity.signin;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TotpTests {

    private static final byte[] SECRET = "12345678901234567890".getBytes(StandardCharsets.US_ASCII);

    /** RFC 6238, appendix B, the rows of SHA1. */
    @ParameterizedTest
    @CsvSource({
        "59, 94287082",
        "1111111109, 07081804",
        "1111111111, 14050471",
        "1234567890, 89005924",
        "2000000000, 69279037",
        "20000000000, 65353130"
    })
    void givesTheCodesOfTheStandard(long second, String code) {
        assertThat(Totp.code(SECRET, second / Totp.STEP_SECONDS, 8)).isEqualTo(code);
    }

    /** RFC 4648, section 10, without padding. */
    @ParameterizedTest
    @CsvSource({"f, MY", "fo, MZXQ", "foo, MZXW6", "foob, MZXW6YQ", "fooba, MZXW6YTB", "foobar, MZXW6YTBOI"})
    void writesBase32AsTheStandardDoes(String plain, String encoded) {
        assertThat(Totp.base32(plain.getBytes(StandardCharsets.US_ASCII))).isEqualTo(encoded);
    }

    @Test
    void takesTheNeighbouringStepsAndNoOther() {
        Instant now = Instant.ofEpochSecond(1_111_111_109);
        long step = now.getEpochSecond() / Totp.STEP_SECONDS;

        assertThat(Totp.matchingStep(SECRET, Totp.code(SECRET, step - 1, 6), now))
                .hasValue(step - 1);
        assertThat(Totp.matchingStep(SECRET, Totp.code(SECRET, step + 1, 6), now))
                .hasValue(step + 1);
        assertThat(Totp.matchingStep(SECRET, Totp.code(SECRET, step - 2, 6), now))
                .isEmpty();
        assertThat(Totp.matchingStep(SECRET, Totp.code(SECRET, step + 2, 6), now))
                .isEmpty();
    }
}
