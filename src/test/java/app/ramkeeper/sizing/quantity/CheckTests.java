package app.ramkeeper.sizing.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CheckTests {

    @ParameterizedTest
    @CsvSource({"8, HOLDS", "9, HOLDS", "9.01, CLOSE", "10, CLOSE", "10.01, FAILS", "NaN, FAILS"})
    void judgesAnUpperLimit(double number, Verdict verdict) {
        assertThat(Check.atMost("r", number, 10, "bar").verdict()).isEqualTo(verdict);
    }

    @ParameterizedTest
    @CsvSource({"12, HOLDS", "11, HOLDS", "10.99, CLOSE", "10, CLOSE", "9.99, FAILS", "NaN, FAILS"})
    void judgesALowerLimit(double number, Verdict verdict) {
        assertThat(Check.atLeast("r", number, 10, "mm").verdict()).isEqualTo(verdict);
    }

    @ParameterizedTest
    @CsvSource({"6, FAILS, 7.5", "8, CLOSE, 7.5", "12, HOLDS, 7.5", "30, HOLDS, 50", "49, CLOSE, 50", "51, FAILS, 50"})
    void judgesTheNearerEndOfARange(double number, Verdict verdict, double limit) {
        Check check = Check.between("length", number, 7.5, 50, "m");

        assertThat(check.verdict()).isEqualTo(verdict);
        assertThat(check.limit()).isEqualTo(limit);
    }

    @Test
    void saysTheOutcomeInASentence() {
        assertThat(Check.atMost("Surge", 12.345, 10, "bar").sentence())
                .isEqualTo("Surge fails: 12.35 bar, at most 10 bar.");
        assertThat(Check.atLeast("Length", 10, 10, "m").sentence())
                .isEqualTo("Length holds, but only just: 10 m, at least 10 m.");
        assertThat(Check.atMost("Ratio", 1, 2, "").because("So.").sentence())
                .isEqualTo("Ratio holds: 1, at most 2. So.");
    }

    @Test
    void keepsTheWorseVerdict() {
        assertThat(Verdict.HOLDS.and(Verdict.CLOSE)).isEqualTo(Verdict.CLOSE);
        assertThat(Verdict.FAILS.and(Verdict.HOLDS)).isEqualTo(Verdict.FAILS);
        assertThat(Verdict.CLOSE.and(Verdict.CLOSE)).isEqualTo(Verdict.CLOSE);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "12.3456, 12.35",
        "12, 12",
        "0.0125, 0.0125",
        "-3.5, -3.5",
        "999.94, 999.9",
        "1234.6, 1235",
        "100, 100",
        "1000000, 1000000",
        "12345678, 1.235e+07",
        "0.0000151, 1.510e-05"
    })
    void writesNumbersForPeople(double value, String text) {
        assertThat(Numbers.text(value)).isEqualTo(text);
    }

    @Test
    void notesSayWhatIsOutside() {
        Note note = Note.outside("the table", "flow", 5, 6, 360, "l/min");

        assertThat(note.code()).isEqualTo(Note.Code.OUTSIDE_RANGE);
        assertThat(note.sentence())
                .isEqualTo("flow is 5 l/min, outside the 6 to 360 l/min that the table was made for.");
        Noted<String> noted = Noted.of("x", note).with(List.of(new Note(Note.Code.ASSUMED, "Taken.")));
        assertThat(noted.notes()).hasSize(2);
        assertThat(noted.has(Note.Code.ASSUMED)).isTrue();
        assertThat(noted.has(Note.Code.CAUTION)).isFalse();
        assertThat(Noted.of("x").notes()).isEmpty();
    }

    @Test
    void combinesUncertaintiesToFirstOrder() {
        Uncertain three = new Uncertain(3, 0.3);
        Uncertain four = new Uncertain(4, 0.4);

        assertThat(three.plus(four)).isEqualTo(new Uncertain(7, 0.5));
        assertThat(three.minus(four).value()).isEqualTo(-1);
        assertThat(three.minus(four).standardUncertainty()).isCloseTo(0.5, within(1e-12));
        assertThat(three.times(four).value()).isEqualTo(12);
        assertThat(three.times(four).relativeUncertainty()).isCloseTo(Math.hypot(0.1, 0.1), within(1e-12));
        assertThat(three.times(-2)).isEqualTo(new Uncertain(-6, 0.6));
        assertThat(Uncertain.relative(-4, 0.1).standardUncertainty()).isCloseTo(0.4, within(1e-12));
        assertThat(Uncertain.exact(0).relativeUncertainty()).isZero();
        assertThat(new Uncertain(0, 1).relativeUncertainty()).isInfinite();
    }

    @Test
    void namesWhatWasNotFound() {
        assertThat(new NotConverged("bore", 7)).hasMessage("No bore found within 7 steps");
    }
}
