package app.ramkeeper.sizing.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.design.DeliveryForecast.Contribution;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Uncertain;
import app.ramkeeper.sizing.ram.LineLoss;
import app.ramkeeper.sizing.ram.PerformanceTable;
import app.ramkeeper.sizing.ram.PumpModel;
import app.ramkeeper.sizing.ram.Setups;
import app.ramkeeper.sizing.water.Ambient;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ForecastTests {

    private static final Uncertain ONE = Uncertain.exact(1);

    /** Only the model is uncertain: the quantiles are those of its normal. */
    @Test
    void givesTheQuantilesOfANormalWhereThatIsAllThereIs() {
        Spread spread = spread(Uncertain.exact(0.0015), new Uncertain(1, 0.1), ONE);
        double sure = DeliveryForecast.of(battery(), spread(Uncertain.exact(0.0015), ONE, ONE), 1, 100)
                .p50()
                .litresPerDay();

        DeliveryForecast forecast = DeliveryForecast.of(battery(), spread, 42, 10_000);

        assertThat(forecast.p50().litresPerDay() / sure).isCloseTo(1, within(0.005));
        assertThat(forecast.p10().litresPerDay() / sure).isCloseTo(1 - 0.12816, within(0.006));
        assertThat(forecast.p90().litresPerDay() / sure).isCloseTo(1 + 0.12816, within(0.006));
        assertThat(forecast.promise()).isEqualTo(forecast.p10());
        assertThat(forecast.contributions().get(0)).isEqualTo(new Contribution("model", 1));
        assertThat(forecast.notes()).extracting(Note::code).containsExactly(Note.Code.ASSUMED);
    }

    @Test
    void saysWhenTheMiddleOfTheSpreadIsOutside() {
        Uncertain source = Uncertain.exact(0.0015);
        Spread steep = new Spread(Uncertain.exact(14), Uncertain.exact(80), source, ONE, 0, ONE, ONE);
        Spread high = new Spread(Uncertain.exact(5), Uncertain.exact(110), source, ONE, 0, ONE, ONE);
        Spread dry = spread(Uncertain.exact(1e-5), ONE, ONE);

        assertThat(sentences(steep)).anyMatch(text -> text.contains("fall is 14 m, outside the 1.5 to 12 m"));
        assertThat(sentences(high)).anyMatch(text -> text.contains("delivers nothing at"));
        assertThat(sentences(dry)).anyMatch(text -> text.contains("least drive flow"));
        assertThatThrownBy(() -> new Spread(Uncertain.exact(5), Uncertain.exact(5), source, ONE, 0, ONE, ONE))
                .hasMessageContaining("lift is 5.0 m");
    }

    private static List<String> sentences(Spread spread) {
        return DeliveryForecast.of(battery(), spread, 1, 100).notes().stream()
                .map(Note::sentence)
                .toList();
    }

    /** 60 % everywhere: 5 % of drive flow and 1 % of fall stand beside the prior at the table's end as inside it. */
    @Test
    void keepsAnInputsUncertaintyAtTheEndOfATable() {
        double[][][] even = {{{0.6, 0.6}, {0.6, 0.6}}, {{0.6, 0.6}, {0.6, 0.6}}};
        PumpModel own = Examples.pump("Two inch", 20, 60, 50, 1);
        PumpModel model = new PumpModel(
                "Even",
                PerformanceTable.ofEfficiency(new double[] {2, 5}, new double[] {20, 60}, new double[] {20, 60}, even),
                own.leastDrive(),
                own.mostDrive(),
                own.leastFall(),
                own.mostFall(),
                own.mostLift(),
                own.rating(),
                own.driveBore());
        double[][] duties = {{5, 40, 60}, {2, 60, 20}, {4, 30, 40}};
        for (double[] duty : duties) {
            ExpectedReadings readings = ExpectedReadings.of(new AsBuilt(
                    model,
                    Uncertain.relative(duty[0], 0.01),
                    Uncertain.exact(duty[1]),
                    Uncertain.relative(duty[2] / 60_000, 0.05),
                    LineLoss.NONE,
                    Optional.empty(),
                    Factors.NONE,
                    Ambient.standard()));

            assertThat(readings.deliveredFlow().relativeUncertainty())
                    .isCloseTo(Math.sqrt(0.15 * 0.15 + 0.05 * 0.05 + 0.01 * 0.01), within(1e-4));
        }
    }

    @Test
    void repeatsItselfForASeed() {
        Spread spread = spread(new Uncertain(0.0015, 0.0002), Spread.MODEL_PRIOR, Spread.USUAL_RUNNING);

        assertThat(DeliveryForecast.of(battery(), spread, 5, 1000))
                .isEqualTo(DeliveryForecast.of(battery(), spread, 5, 1000))
                .isNotEqualTo(DeliveryForecast.of(battery(), spread, 6, 1000));
    }

    @Test
    void namesWhatContributesMost() {
        Spread source = spread(new Uncertain(0.0015, 0.0002), new Uncertain(1, 0.02), ONE);
        Spread running = spread(new Uncertain(0.0015, 1e-6), new Uncertain(1, 0.02), new Uncertain(0.7, 0.1));

        assertThat(first(source)).isEqualTo("measured source");
        assertThat(first(running)).isEqualTo("share of time running");
        assertThat(DeliveryForecast.of(battery(), running, 3, 2000).contributions().stream()
                        .mapToDouble(Contribution::share)
                        .sum())
                .isCloseTo(1, within(1e-9));
    }

    @Test
    void leavesInTheStreamWhatMustStay() {
        Spread all = spread(Uncertain.exact(0.0015), ONE, ONE);
        Spread less = new Spread(
                all.fall(), all.lift(), all.measuredSource(), all.dryShare(), 0.0012, all.model(), all.running());

        assertThat(DeliveryForecast.of(battery(), less, 1, 100).p90()).isEqualTo(Flow.NONE);
        assertThat(DeliveryForecast.of(battery(), all, 1, 100).p10()).isGreaterThan(Flow.NONE);
        assertThatThrownBy(() -> DeliveryForecast.of(battery(), all, 1, 99)).hasMessageContaining("evaluations is 99");
    }

    @Test
    void stopsPumpsThatTheSourceDoesNotFeed() {
        Uncertain forTwo = Uncertain.exact(0.001);
        double forecast = DeliveryForecast.of(battery(), spread(forTwo, ONE, ONE), 1, 100)
                .p50()
                .litresPerMinute();

        BatteryDuty two = battery().duty(new Flow(0.001), List.of(0, 1));
        assertThat(battery().duty(new Flow(0.001), List.of(0, 1, 2)).delivered())
                .isEqualTo(Flow.NONE);
        assertThat(forecast).isPositive().isCloseTo(two.delivered().litresPerMinute(), within(1e-6));
    }

    @Test
    void tellsADeviationWithItsUncertainty() {
        Deviation deviation = Deviation.of(new Uncertain(8, 0.4), new Uncertain(10, 1));

        assertThat(deviation.percent()).isCloseTo(-20, within(1e-9));
        assertThat(deviation.standardUncertaintyPercent()).isCloseTo(8.944, within(0.001));
        assertThat(deviation.clear()).isTrue();
        assertThat(Deviation.of(new Uncertain(8.5, 0.4), new Uncertain(10, 1)).clear())
                .isFalse();
        assertThatThrownBy(() -> Deviation.of(ONE, Uncertain.exact(0))).hasMessageContaining("expected value is 0");
    }

    @Test
    void expectsReadingsThatHangTogether() {
        ExpectedReadings readings = ExpectedReadings.of(install(Factors.NONE));

        double q = readings.deliveredFlow().value();
        assertThat(readings.efficiency().value())
                .isCloseTo(q * 30 / (readings.driveFlow().value() * 4), within(1e-12));
        assertThat(readings.deliveredFlow().relativeUncertainty()).isBetween(0.15, 0.25);
        assertThat(readings.standing().bar()).isCloseTo(2.94, within(0.01));
        assertThat(readings.running()).isGreaterThan(readings.standing());
        ExpectedReadings.Band band = readings.beats().orElseThrow();
        assertThat(band.low()).isLessThan(band.high());
        assertThat(band.holds(60)).isTrue();
        assertThat(band.holds(20)).isFalse();
        assertThat(band.holds(150)).isFalse();
        assertThat(readings.deadHead().orElseThrow().bar()).isBetween(10., 25.);
    }

    @Test
    void scalesByTheFactorsAUserSet() {
        ExpectedReadings plain = ExpectedReadings.of(install(Factors.NONE));
        ExpectedReadings scaled = ExpectedReadings.of(install(new Factors(0.9, 1.1)));

        assertThat(scaled.deliveredFlow().value())
                .isCloseTo(0.9 * plain.deliveredFlow().value(), within(1e-12));
        assertThat(scaled.beats().orElseThrow().low())
                .isCloseTo(1.1 * plain.beats().orElseThrow().low(), within(0.2));
        assertThat(scaled.notes()).extracting(Note::sentence).anyMatch(text -> text.contains("scaled by 0.9"));
    }

    private static String first(Spread spread) {
        return DeliveryForecast.of(battery(), spread, 3, 2000)
                .contributions()
                .get(0)
                .input();
    }

    private static Battery battery() {
        return BatteryTests.battery(Optional.empty());
    }

    private static Spread spread(Uncertain source, Uncertain model, Uncertain running) {
        return new Spread(Uncertain.exact(5), Uncertain.exact(40), source, ONE, 0, model, running);
    }

    private static AsBuilt install(Factors factors) {
        LineLoss line = q -> 2e7 * q * q;
        return new AsBuilt(
                Examples.pump("Two inch", 20, 80, 50, 1),
                new Uncertain(4, 0.05),
                new Uncertain(30, 0.3),
                new Uncertain(0.0011, 0.00005),
                line,
                Optional.of(Setups.hill()),
                factors,
                Ambient.standard());
    }
}
