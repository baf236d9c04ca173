package app.ramkeeper.sizing.vessel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.water.Ambient;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Water of 10 degC weighs 9804 N/m3, so a metre is 0.09804 bar. */
class PreChargeTests {

    private static final double BAR_PER_M = 0.098037;
    private final PreChargeRule rule = PreChargeRule.usual();

    @ParameterizedTest(name = "{0} m: static less half a bar")
    @CsvSource({"20", "50", "80"})
    void takesHalfABarOffInTheUsualRange(double lift) {
        PreCharge advice = advise(lift, 25, Optional.of(Pressure.ofBar(1)));

        assertThat(bar(advice)).isCloseTo(lift * BAR_PER_M - 0.5, within(0.002));
        assertThat(advice.basis()).isEqualTo("static delivery pressure less 0.50 bar");
        assertThat(advice.notes()).extracting(Note::code).containsExactly(Note.Code.COMMON_PRACTICE, Note.Code.CAUTION);
    }

    @Test
    void goesByTheMakerElsewhere() {
        PreCharge maker = advise(100, 25, Optional.of(Pressure.ofBar(8)));
        PreCharge share = advise(100, 25, Optional.empty());

        assertThat(bar(maker)).isEqualTo(8);
        assertThat(maker.basis()).isEqualTo("the maker's figure");
        assertThat(maker.notes()).extracting(Note::code).containsExactly(Note.Code.CAUTION);
        assertThat(bar(share)).isCloseTo(100 * BAR_PER_M * rule.shareElsewhere(), within(0.002));
        assertThat(share.basis()).contains("of the static delivery pressure");
        assertThat(bar(advise(15, 25, Optional.empty())))
                .isCloseTo(15 * BAR_PER_M * rule.shareElsewhere(), within(0.002));
    }

    @Test
    void refusesOutsideTheRuleAndAboveTheRating() {
        double low = rule.refuseBelow().metres();
        double high = rule.refuseAbove().metres();

        assertThat(advise(low, 60, Optional.empty()).charge()).isPresent();
        assertThat(advise(high, 60, Optional.empty()).charge()).isPresent();
        assertThat(advise(low - 0.01, 60, Optional.empty()).charge()).isEmpty();
        assertThat(advise(high + 0.01, 60, Optional.empty()).notes())
                .singleElement()
                .satisfies(note -> {
                    assertThat(note.code()).isEqualTo(Note.Code.ASK_ENGINEER);
                    assertThat(note.sentence()).endsWith("ask the engineer.");
                });
        // 50 m are 4.90 bar: a vessel of 4.89 does not bear them, one of 4.91 does
        assertThat(advise(50, 4.89, Optional.empty()).charge()).isEmpty();
        assertThat(advise(50, 4.91, Optional.empty()).charge()).isPresent();
        // the maker's charge itself may be too much
        assertThat(advise(100, 11, Optional.of(Pressure.ofBar(11.5))).charge()).isEmpty();
        assertThatThrownBy(() -> advise(0, 10, Optional.empty())).hasMessageContaining("lift");
        assertThatThrownBy(() -> advise(50, 0, Optional.empty())).hasMessageContaining("vessel rating");
    }

    @Test
    void refusesAChargeThatIsNoneOrAboveStatic() {
        // 20 m are 1.96 bar: three bar less is no charge
        PreChargeRule greedy = new PreChargeRule(
                Pressure.ofBar(3), rule.usualFrom(), rule.usualTo(), 0.85, rule.refuseBelow(), rule.refuseAbove());
        PreCharge none = PreCharge.advise(
                new Head(20), VesselKind.BLADDER, Pressure.ofBar(10), Optional.empty(), greedy, Ambient.standard());
        PreCharge high = advise(10, 10, Optional.of(Pressure.ofBar(3)));

        assertThat(none.charge()).isEmpty();
        assertThat(none.notes()).extracting(Note::code).containsExactly(Note.Code.ASK_ENGINEER);
        assertThat(high.charge()).isEmpty();
        assertThat(high.notes())
                .singleElement()
                .satisfies(note -> assertThat(note.sentence())
                        .contains("By the maker's figure the charge would be 3.00 bar")
                        .contains("static delivery pressure of 0.98 bar"));
        assertThatThrownBy(() -> advise(10, 10, Optional.of(Pressure.ofBar(-3))))
                .hasMessageContaining("maker's charge");
    }

    @Test
    void chargesNoPlainChamber() {
        PreCharge none = PreCharge.advise(
                new Head(50), VesselKind.PLAIN_CHAMBER, Pressure.ofBar(10), Optional.empty(), rule, Ambient.standard());

        assertThat(none.charge()).isEmpty();
        assertThat(none.notes())
                .singleElement()
                .satisfies(note -> assertThat(note.sentence()).contains("snifter"));
    }

    private PreCharge advise(double lift, double ratingBar, Optional<Pressure> maker) {
        return PreCharge.advise(
                new Head(lift), VesselKind.BLADDER, Pressure.ofBar(ratingBar), maker, rule, Ambient.standard());
    }

    private static double bar(PreCharge advice) {
        return advice.charge().orElseThrow().bar();
    }
}
