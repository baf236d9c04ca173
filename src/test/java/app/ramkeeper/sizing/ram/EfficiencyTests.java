package app.ramkeeper.sizing.ram;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Noted;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EfficiencyTests {

    private static final Flow DRIVE = Flow.ofLitresPerMinute(65);

    @Test
    void refusesALiftNotAboveTheFall() {
        assertThatThrownBy(() -> Efficiency.dAubuisson(DRIVE, Flow.NONE, new Head(5), new Head(5)))
                .isInstanceOf(ImpossibleInput.class)
                .hasMessage("lift is 5.0 m, allowed is more than the fall of 5.0 m");
        assertThatThrownBy(() -> Efficiency.delivered(0.5, DRIVE, new Head(0), new Head(5)))
                .hasMessageContaining("fall is 0.0");
    }

    @Test
    void refusesToDeliverAllOfTheDriveFlow() {
        assertThatThrownBy(() -> Efficiency.rankine(DRIVE, DRIVE, new Head(5), new Head(15)))
                .hasMessageContaining("delivered flow is 65.0 l/min");
        assertThatThrownBy(() -> Efficiency.dAubuisson(Flow.NONE, Flow.NONE, new Head(5), new Head(15)))
                .hasMessageContaining("drive flow is 0.0");
    }

    @Test
    void driveForUndoesDelivered() {
        Flow delivered = Efficiency.delivered(0.6, DRIVE, new Head(10), new Head(22));

        assertThat(delivered.litresPerMinute()).isCloseTo(17.727, within(0.001));
        assertThat(Efficiency.driveFor(0.6, delivered, new Head(10), new Head(22))
                        .litresPerMinute())
                .isCloseTo(65, within(1e-9));
        assertThat(Efficiency.driveForShare(0.52961, Flow.ofLitresPerMinute(7.75))
                        .litresPerMinute())
                .isCloseTo(14.63, within(0.005));
        assertThatThrownBy(() -> Efficiency.delivered(1.1, DRIVE, new Head(10), new Head(22)))
                .hasMessageContaining("efficiency is 1.1");
        assertThatThrownBy(() -> Efficiency.driveFor(0, DRIVE, new Head(10), new Head(22)))
                .hasMessageContaining("efficiency is 0.0");
        assertThatThrownBy(() -> Efficiency.driveForShare(0, DRIVE)).hasMessageContaining("delivered share");
    }

    @ParameterizedTest
    @CsvSource({"6,0.61", "10,0.44", "16,0.25", "24,0.04", "26,0"})
    void readsThePocketBook(double ratio, double efficiency) {
        assertThat(EfficiencyCurve.POCKET_BOOK.efficiency(ratio)).isCloseTo(efficiency, within(1e-12));
        Noted<Delivery> noted = EfficiencyCurve.POCKET_BOOK.at(new Head(2), new Head(2 * ratio), DRIVE);
        assertThat(noted.value().dAubuisson()).isCloseTo(efficiency, within(1e-9));
        assertThat(noted.has(Note.Code.ASSUMED)).isTrue();
        assertThat(noted.has(Note.Code.OUTSIDE_RANGE)).isFalse();
    }

    @Test
    void takesEytelweinsAsRankines() {
        Noted<Delivery> noted = EfficiencyCurve.EYTELWEIN.at(new Head(2), new Head(10), DRIVE);

        assertThat(EfficiencyCurve.EYTELWEIN.efficiency(4)).isCloseTo(0.72, within(1e-12));
        assertThat(EfficiencyCurve.EYTELWEIN.ratio(2, 10)).isEqualTo(4);
        assertThat(noted.value().rankine()).isCloseTo(0.72, within(1e-9));
        assertThat(noted.notes()).extracting(Note::code).containsExactly(Note.Code.ASSUMED);
        assertThat(noted.notes().get(0).sentence()).contains("Eytelwein's formula");
    }

    @Test
    void saysWhenALiftRatioIsOutside() {
        assertThat(EfficiencyCurve.EYTELWEIN
                        .at(new Head(2), new Head(50), DRIVE)
                        .has(Note.Code.OUTSIDE_RANGE))
                .isTrue();
        assertThat(EfficiencyCurve.EYTELWEIN.at(new Head(2), new Head(3), DRIVE).has(Note.Code.OUTSIDE_RANGE))
                .isTrue();
        assertThat(EfficiencyCurve.EYTELWEIN
                        .at(new Head(2), new Head(100), DRIVE)
                        .value()
                        .delivered())
                .isEqualTo(Flow.NONE);
        Noted<Delivery> high = EfficiencyCurve.POCKET_BOOK.at(new Head(2), new Head(54), DRIVE);
        assertThat(high.value().delivered()).isEqualTo(Flow.NONE);
        assertThat(high.has(Note.Code.OUTSIDE_RANGE)).isTrue();
    }

    @Test
    void promisesNothingBeyondEytelweinsRange() {
        assertThat(EfficiencyCurve.EYTELWEIN.efficiency(15)).isCloseTo(1.12 - 0.2 * Math.sqrt(15), within(1e-12));
        assertThat(EfficiencyCurve.EYTELWEIN.efficiency(15.1)).isZero();
        assertThat(EfficiencyCurve.EYTELWEIN.efficiency(0.2)).isCloseTo(0.92, within(1e-12));
        assertThat(EfficiencyCurve.EYTELWEIN
                        .at(new Head(10), new Head(12), DRIVE)
                        .value()
                        .rankine())
                .isCloseTo(0.92, within(1e-9));
    }

    @Test
    void keepsTheShareBelowTheLeastRatio() {
        RatioPerformance own = RatioPerformance.of("its table", new double[] {4, 10}, new double[] {0.7, 0.5});

        assertThat(own.deliveredM3s(10, 20, 0.001)).isCloseTo(0.7 / 4 * 0.001, within(1e-12));
        assertThat(own.notes(10, 20, 0.001))
                .singleElement()
                .extracting(Note::sentence)
                .asString()
                .contains("lift by fall is 2")
                .contains("outside the 4 to 10");
        assertThat(own.notes(10, 60, 0.001)).isEmpty();
        assertThat(own.efficiency(4)).isCloseTo(0.7, within(1e-12));
        assertThat(own.efficiency(10.1)).isZero();
    }

    @Test
    void refusesPointsThatCannotBe() {
        refused("points is 1 ratios", new double[] {4}, new double[] {0.7});
        refused("points is 2 ratios and 1", new double[] {4, 5}, new double[] {0.7});
        refused("lift ratio is 1.0", new double[] {1, 5}, new double[] {0.7, 0.6});
        refused("efficiency at lift ratio 5.0 is 1.2", new double[] {4, 5}, new double[] {0.7, 1.2});
        refused("efficiency at lift ratio 4.0 is 0.3", new double[] {4, 5}, new double[] {0.3, 0.7});
    }

    private static void refused(String message, double[] ratios, double[] efficiencies) {
        assertThatThrownBy(() -> RatioPerformance.of("x", ratios, efficiencies))
                .isInstanceOf(ImpossibleInput.class)
                .hasMessageContaining(message);
    }
}
