package app.ramkeeper.sizing.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.drive.LengthRule;
import app.ramkeeper.sizing.line.GroundProfile;
import app.ramkeeper.sizing.pipe.PipeRun;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Temperature;
import app.ramkeeper.sizing.quantity.Uncertain;
import app.ramkeeper.sizing.ram.LineLoss;
import app.ramkeeper.sizing.ram.PumpModel;
import app.ramkeeper.sizing.ram.RatioPerformance;
import app.ramkeeper.sizing.surge.Anchorage;
import app.ramkeeper.sizing.water.Ambient;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Worked values of the Javadoc: pumps of 60 % at any ratio, 5 m of fall, 40 m of lift, pipes so wide that they take
 * nothing. Each litre of drive flow then gives 0.6 x 5 / 40 = 0.075 litres; by hand.
 */
class WorkedDesignTests {

    private static final Ambient AMBIENT = Ambient.standard();
    private static final PipeRun WIDE = new PipeRun(new Length(2), new Length(10), new Length(1e-6), 0);
    private static final Feed FEED =
            new Feed(new PipeRun(new Length(0.05), new Length(60), new Length(2e-6), 0), new Head(1));

    private final PumpModel pump = new PumpModel(
            "Sixty",
            RatioPerformance.of("sixty per cent", new double[] {2, 30}, new double[] {0.6, 0.6}),
            Flow.ofLitresPerMinute(25),
            Flow.ofLitresPerMinute(60),
            new Head(1),
            new Head(12),
            new Head(100),
            Pressure.ofBar(25),
            Length.ofMillimetres(50));
    private final LineLoss line = LineLoss.of(List.of(WIDE), AMBIENT);

    @Test
    void sharesTheSourceOverPumpsThatRun() {
        Battery two = battery(Optional.empty());

        BatteryDuty both = two.duty(Flow.ofLitresPerMinute(100), List.of(0, 1));
        assertThat(both.delivered().litresPerMinute()).isCloseTo(7.5, within(1e-4));
        assertThat(both.pumps())
                .allSatisfy(each -> assertThat(each.drive().litresPerMinute()).isCloseTo(50, within(1e-9)));
        assertThat(both.pumps())
                .allSatisfy(
                        each -> assertThat(each.delivered().litresPerMinute()).isCloseTo(3.75, within(1e-4)));
        assertThat(both.spilled().litresPerMinute()).isCloseTo(0, within(1e-9));
        assertThat(both.head().metres()).isCloseTo(40, within(1e-6));
        assertThat(both.feedLoss().metres()).isZero();
        assertThat(both.notes()).isEmpty();

        BatteryDuty one = two.best(Flow.ofLitresPerMinute(40));
        assertThat(one.running()).isEqualTo(1);
        assertThat(one.delivered().litresPerMinute()).isCloseTo(3, within(1e-4));

        BatteryDuty most = two.duty(Flow.ofLitresPerMinute(200), List.of(0, 1));
        assertThat(most.delivered().litresPerMinute()).isCloseTo(9, within(1e-4));
        assertThat(most.spilled().litresPerMinute()).isCloseTo(80, within(1e-9));
    }

    @Test
    void stopsPumpsAsTheSourceFalls() {
        List<BatteryDuty> duties = battery(Optional.empty())
                .asTheSourceFalls(
                        List.of(Flow.ofLitresPerMinute(120), Flow.ofLitresPerMinute(49), Flow.ofLitresPerMinute(24)));

        assertThat(duties).extracting(BatteryDuty::running).containsExactly(2, 1, 0);
        assertThat(battery(Optional.empty())
                        .duty(Flow.ofLitresPerMinute(49), List.of(0, 1))
                        .notes())
                .singleElement()
                .satisfies(note -> assertThat(note.sentence()).contains("fewer should run"));
    }

    @Test
    void bringsNoMoreThanTheFeedPipe() {
        // Colebrook-White is explicit for a given loss: v = -2 s log10(k/(3.7 D) + 2.51 nu/(D s)), s = sqrt(2 g D h/L),
        // which for 1 m over 60 m at nu 1.306e-6 m2/s is 0.8389 m/s
        assertThat(FEED.capacity(AMBIENT).litresPerMinute()).isCloseTo(98.83, within(0.03));

        Battery fed = battery(Optional.of(FEED));
        Flow capacity = FEED.capacity(AMBIENT);
        assertThat(fed.reaching(Flow.ofLitresPerMinute(50)).litresPerMinute()).isEqualTo(50);
        assertThat(fed.reaching(Flow.ofLitresPerMinute(300))).isEqualTo(capacity);
        BatteryDuty duty = fed.best(Flow.ofLitresPerMinute(300));
        assertThat(duty.feedLoss().metres()).isCloseTo(1, within(1e-6));
        assertThat(duty.notes()).anyMatch(note -> note.sentence().startsWith("The feed pipe brings"));
    }

    @Test
    void forecastsTheTailOfOneUncertainInput() {
        Spread spread = new Spread(
                Uncertain.exact(5),
                Uncertain.exact(40),
                Uncertain.exact(100 / 60e3),
                Uncertain.exact(1),
                0,
                new Uncertain(1, 0.15),
                Uncertain.exact(0.9));

        DeliveryForecast forecast = DeliveryForecast.of(battery(Optional.empty()), spread, 7, 100_000);

        // 7.5 l/min x 0.9; a normal has its tenth percentile 1.2816 standard deviations below the middle
        assertThat(forecast.p50().litresPerMinute()).isCloseTo(6.75, within(0.02));
        assertThat(forecast.p10().litresPerMinute()).isCloseTo(6.75 * (1 - 1.2816 * 0.15), within(0.03));
        assertThat(forecast.p90().litresPerMinute()).isCloseTo(6.75 * (1 + 1.2816 * 0.15), within(0.03));
        assertThat(forecast.contributions().get(0).share()).isCloseTo(1, within(1e-9));
        assertThat(forecast.promise()).isEqualTo(forecast.p10());
    }

    @Test
    void expectsReadingsOfOnePump() {
        AsBuilt install = new AsBuilt(
                pump,
                new Uncertain(5, 0.05),
                Uncertain.exact(40),
                new Uncertain(60 / 60e3, 2 / 60e3),
                line,
                Optional.empty(),
                Factors.NONE,
                AMBIENT);

        ExpectedReadings expected = ExpectedReadings.of(install);

        // 60 x 0.075; shares 0.15 of the model, 0.01 of the fall and 1/30 of the drive flow in quadrature: 15.4 %
        assertThat(expected.deliveredFlow().value() * 60e3).isCloseTo(4.5, within(1e-4));
        assertThat(expected.deliveredFlow().relativeUncertainty()).isCloseTo(0.154, within(0.0005));
        assertThat(expected.efficiency().value()).isCloseTo(0.6, within(1e-5));
        assertThat(expected.standing().bar()).isCloseTo(3.92, within(0.005));
        assertThat(expected.running().bar()).isCloseTo(3.92, within(0.005));
        assertThat(expected.beats()).isEmpty();
        assertThat(expected.deadHead()).isEmpty();
    }

    @Test
    void addsTheUncertaintyOfEachInput() {
        double[] fall = {0.5, 0, 0};
        double[] lift = {0, 4, 0};
        double[] drive = {0, 0, 0.1e-3};
        for (int i = 0; i < 3; i++) {
            ExpectedReadings expected = ExpectedReadings.of(new AsBuilt(
                    pump,
                    new Uncertain(5, fall[i]),
                    new Uncertain(40, lift[i]),
                    new Uncertain(1e-3, drive[i]),
                    line,
                    Optional.empty(),
                    Factors.NONE,
                    AMBIENT));

            // a tenth of one input beside 0.15 of the model; delivered goes with fall and drive flow, against the lift
            assertThat(expected.deliveredFlow().relativeUncertainty()).isCloseTo(Math.hypot(0.15, 0.1), within(2e-4));
        }
    }

    @Test
    void scalesByTheFactorsOfAnInstallAndSaysSo() {
        AsBuilt install = new AsBuilt(
                pump,
                Uncertain.exact(5),
                Uncertain.exact(40),
                Uncertain.exact(1e-3),
                line,
                Optional.empty(),
                new Factors(0.8, 1.1),
                AMBIENT);

        ExpectedReadings expected = ExpectedReadings.of(install);

        assertThat(expected.deliveredFlow().value() * 60e3).isCloseTo(3.6, within(1e-4));
        assertThat(expected.notes()).anyMatch(note -> note.sentence().contains("scaled by 0.8"));
    }

    @Test
    void pricesTheOnlyDesignThereIs() {
        DesignTask task = new DesignTask(
                GroundProfile.of(0, 0, 400, 38),
                40,
                new Head(5),
                Flow.ofLitresPerMinute(50),
                Flow.ofLitresPerDay(4000),
                new Length(24),
                new DesignLimits(
                        LengthRule.BORES_150_TO_1000,
                        Anchorage.THROUGHOUT,
                        1.5,
                        1.5,
                        1,
                        Temperature.ofCelsius(20),
                        false,
                        25),
                AMBIENT);
        DesignCatalogue catalogue = new DesignCatalogue(
                List.of(new PricedPump(pump, 1000)),
                List.of(new PricedPipe(Examples.steel(50), 20)),
                List.of(new PricedPipe(Examples.pe(32, "SDR 11"), 4)));

        DesignFront front = DesignSearch.front(task, catalogue);

        // 1000 + 24 x 20 + 4 x hypot(400, 38)
        assertThat(front.designs())
                .isNotEmpty()
                .allSatisfy(design -> assertThat(design.cost()).isCloseTo(3087.2, within(0.1)));
        assertThat(front.rejected()).isEmpty();
        assertThat(task.lift().metres()).isEqualTo(40);
        assertThat(DesignSearch.front(withDemand(task, 9000), catalogue).rejected())
                .singleElement()
                .satisfies(rejection -> assertThat(rejection.reason()).isEqualTo(Rejection.Reason.DEMAND));
    }

    @Test
    void refusesWhatCannotBe() {
        assertThatThrownBy(() -> new Feed(WIDE, new Head(0)))
                .isInstanceOf(ImpossibleInput.class)
                .hasMessageContaining("head of the feed pipe");
        assertThatThrownBy(() -> new Factors(0, 1)).hasMessageContaining("delivered factor");
        assertThatThrownBy(() -> Deviation.of(Uncertain.exact(1), Uncertain.exact(0)))
                .hasMessageContaining("expected value");
        assertThatThrownBy(() -> battery(Optional.empty()).duty(Flow.ofLitresPerMinute(60), List.of(2)))
                .hasMessageContaining("index of a pump");
    }

    @Test
    void saysWhenADeviationIsClear() {
        assertThat(Deviation.of(new Uncertain(8, 0.4), new Uncertain(10, 1)).clear())
                .isTrue();
        assertThat(Deviation.of(new Uncertain(8, 0.4), new Uncertain(10, 1.5)).clear())
                .isFalse();
        assertThat(new ExpectedReadings.Band(40, 60)).satisfies(band -> {
            assertThat(band.holds(40)).isTrue();
            assertThat(band.holds(60)).isTrue();
            assertThat(band.holds(39.9)).isFalse();
            assertThat(band.holds(60.1)).isFalse();
        });
    }

    private Battery battery(Optional<Feed> feed) {
        PumpUnit unit = new PumpUnit(pump, WIDE);
        return new Battery(List.of(unit, unit), new Head(5), new Head(40), line, feed, AMBIENT);
    }

    private static DesignTask withDemand(DesignTask task, double litresPerDay) {
        return new DesignTask(
                task.ground(),
                task.tankLevelM(),
                task.fall(),
                task.source(),
                Flow.ofLitresPerDay(litresPerDay),
                task.driveLength(),
                task.limits(),
                task.ambient());
    }
}
