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

class PerformanceTableTests {

    @Test
    void repeatsItsEntries() {
        double[][][] eta = Tables.efficiencies();
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 4; j++) {
                for (int k = 0; k < 3; k++) {
                    double expected = Double.isNaN(eta[i][j][k])
                            ? 0
                            : eta[i][j][k] * Tables.DRIVES[k] * Tables.FALLS[i] / Tables.LIFTS[j];
                    assertThat(lMin(Tables.FALLS[i], Tables.LIFTS[j], Tables.DRIVES[k]))
                            .isCloseTo(expected, within(1e-9));
                }
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"2,10,20", "3,15,33", "5.5,61,47", "8,79,60", "2.1,10.1,20.1"})
    void givesBackAnEvenEfficiencyEverywhere(double fall, double lift, double drive) {
        double given = Tables.even(0.6).deliveredM3s(fall, lift, drive / 60_000) * 60_000;

        assertThat(given).isCloseTo(0.6 * drive * fall / lift, within(1e-9));
    }

    @Test
    void isLinearInOneOverTheLift() {
        PerformanceTable table = PerformanceTable.ofDelivered(
                new double[] {5}, new double[] {20, 30}, new double[] {40}, new double[][][] {{{6}, {4}}});

        assertThat(table.deliveredM3s(5, 25, 40 / 60_000.) * 60_000).isCloseTo(4.8, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"12,8", "8,8"})
    void keepsItsEdgeWhereThatPromisesTooLittle(double fall, double sameAs) {
        assertThat(lMin(fall, 40, 40)).isEqualTo(lMin(sameAs, 40, 40)).isPositive();
        assertThat(lMin(4, 7, 40)).isEqualTo(lMin(4, 10, 40));
        assertThat(lMin(4, 20, 90)).isEqualTo(lMin(4, 20, 60));
    }

    @ParameterizedTest
    @CsvSource({"1.9,20,40", "4,81,40", "4,20,19"})
    void promisesNothingBeyondItsOtherEdges(double fall, double lift, double drive) {
        Noted<Delivery> noted = Tables.hill().at(new Head(fall), new Head(lift), Flow.ofLitresPerMinute(drive));

        assertThat(noted.value().delivered()).isEqualTo(Flow.NONE);
        assertThat(noted.has(Note.Code.OUTSIDE_RANGE)).isTrue();
    }

    @Test
    void promisesNothingNextToABlankAndSaysSo() {
        Noted<Delivery> noted = Tables.hill().at(new Head(3), new Head(60), Flow.ofLitresPerMinute(40));

        assertThat(noted.value().delivered()).isEqualTo(Flow.NONE);
        assertThat(noted.value().dAubuisson()).isZero();
        assertThat(noted.notes())
                .singleElement()
                .extracting(Note::sentence)
                .asString()
                .contains("blank");
    }

    @Test
    void says_nothing_inside() {
        Noted<Delivery> noted = Tables.hill().at(new Head(4), new Head(20), Flow.ofLitresPerMinute(40));

        assertThat(noted.notes()).isEmpty();
        assertThat(noted.value().dAubuisson()).isCloseTo(0.75 - 0.075 - 0.01, within(1e-9));
        assertThat(noted.value().rankine()).isLessThan(noted.value().dAubuisson());
        assertThat(noted.value().drive().litresPerMinute()).isCloseTo(40, within(1e-9));
    }

    @Test
    void notesNameTheInputOutside() {
        assertThat(Tables.hill().notes(12, 40, 40 / 60_000.))
                .singleElement()
                .extracting(Note::sentence)
                .isEqualTo("fall is 12 m, outside the 2 to 8 m that the performance table was made for.");
        assertThat(Tables.hill().notes(4, 5, 90 / 60_000.)).hasSize(2);
    }

    @Test
    void takesATableOfShares() {
        PerformanceTable table = PerformanceTable.ofShare(
                new double[] {4, 5}, new double[] {20, 25}, new double[][] {{0.12, 0.096}, {0.15, 0.12}}, 10, 60);

        assertThat(table.deliveredM3s(4, 20, 33 / 60_000.) * 60_000).isCloseTo(0.12 * 33, within(1e-9));
        assertThat(table.deliveredM3s(4, 20, 9 / 60_000.)).isZero();
        assertThat(table.deliveredM3s(4, 20, 60 / 60_000.) * 60_000).isCloseTo(7.2, within(1e-9));
    }

    @Test
    void standsInWhereTheLiftIsNotAboveTheFall() {
        double blank = PerformanceTable.BLANK;
        PerformanceTable table = PerformanceTable.ofDelivered(
                new double[] {5, 20}, new double[] {10, 40}, new double[] {60}, new double[][][] {
                    {{20}, {4}}, {{blank}, {15}}
                });

        assertThat(table.deliveredM3s(10, 20, 60 / 60_000.))
                .isGreaterThanOrEqualTo(table.deliveredM3s(5, 20, 60 / 60_000.));
    }

    @Test
    void refusesEntriesThatCannotBe() {
        refused("delivered flow at fall 5.0 m, lift 20.0 m, drive flow 40.0 l/min is 11.0 l/min", new double[][][] {
            {{11}, {4}}
        });
        refused("is 5.0 l/min, allowed is at least the 5.5 l/min of more lift", new double[][][] {{{5}, {5.5}}});
        refused("is blank, allowed is at least", new double[][][] {{{PerformanceTable.BLANK}, {4}}});
        refused("is -1.0 l/min", new double[][][] {{{-1}, {-1}}});
        refused("entries by lifts at fall 5.0 is 1, allowed is just 2", new double[][][] {{{5}}});
        refused("entries by drive flows at lift 20.0 is 0", new double[][][] {{{}, {}}});
        refused("entries by falls is 2", new double[][][] {{{5}, {4}}, {{5}, {4}}});
    }

    private static void refused(String message, double[][][] entries) {
        assertThatThrownBy(() -> PerformanceTable.ofDelivered(
                        new double[] {5}, new double[] {20, 30}, new double[] {40}, entries))
                .isInstanceOf(ImpossibleInput.class)
                .hasMessageContaining(message);
    }

    @Test
    void refusesLessFromMoreFallAndFromMoreDriveFlow() {
        assertThatThrownBy(() -> PerformanceTable.ofDelivered(
                        new double[] {4, 5}, new double[] {20}, new double[] {40}, new double[][][] {{{5}}, {{4.9}}}))
                .hasMessageContaining("of less fall");
        assertThatThrownBy(() -> PerformanceTable.ofDelivered(
                        new double[] {4}, new double[] {20}, new double[] {40, 50}, new double[][][] {{{5, 4.9}}}))
                .hasMessageContaining("of less drive flow");
    }

    @Test
    void refusesAxesThatDoNotRise() {
        double[][][] one = {{{4}}};
        assertThatThrownBy(
                        () -> PerformanceTable.ofDelivered(new double[] {}, new double[] {20}, new double[] {40}, one))
                .hasMessageContaining("falls is empty");
        assertThatThrownBy(() ->
                        PerformanceTable.ofDelivered(new double[] {5, 5}, new double[] {20}, new double[] {40}, one))
                .hasMessageContaining("falls is 5.0, allowed is more than 5.0 m");
        assertThatThrownBy(
                        () -> PerformanceTable.ofDelivered(new double[] {5}, new double[] {0}, new double[] {40}, one))
                .hasMessageContaining("lifts is 0.0");
    }

    private static double lMin(double fall, double lift, double drive) {
        return Tables.hill().deliveredM3s(fall, lift, drive / 60_000) * 60_000;
    }
}
