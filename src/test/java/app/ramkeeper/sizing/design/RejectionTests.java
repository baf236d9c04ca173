package app.ramkeeper.sizing.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.design.Rejection.Reason;
import app.ramkeeper.sizing.drive.LengthRule;
import app.ramkeeper.sizing.line.DeliveryLine;
import app.ramkeeper.sizing.line.GroundProfile;
import app.ramkeeper.sizing.line.LineLoad;
import app.ramkeeper.sizing.line.Outlet;
import app.ramkeeper.sizing.quantity.Check;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Temperature;
import app.ramkeeper.sizing.quantity.Verdict;
import app.ramkeeper.sizing.ram.PumpModel;
import app.ramkeeper.sizing.surge.Anchorage;
import app.ramkeeper.sizing.water.Ambient;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The one sentence that each rejected pump gets. */
class RejectionTests {

    private static final double FALL = 5;
    private static final double SOURCE = 50;
    private static final double DEMAND = 2500;

    @Test
    void namesTheFall() {
        assertThat(only(task(1.4, 38, SOURCE, DEMAND, limits(1.5, false))))
                .isEqualTo(rejected(Reason.FALL, "The fall of 1.4 m is outside its 1.5 to 12 m."));
        assertThat(only(task(12.1, 38, SOURCE, DEMAND, limits(1.5, false))).reason())
                .isEqualTo(Reason.FALL);
        // its own lowest fall, but the drive pipe takes some of it
        assertThat(only(task(1.5, 9, SOURCE, 50_000, limits(1.5, false)))).satisfies(rejection -> {
            assertThat(rejection.reason()).isEqualTo(Reason.DRIVE_PIPE);
            assertThat(rejection.sentence()).contains("m of net fall, less than the pump's 1.5 m.");
        });
        assertThat(only(task(1.7, 9, SOURCE, 50_000, limits(1.5, false))).reason())
                .isEqualTo(Reason.DEMAND);
        assertThat(only(task(12, 98, SOURCE, 50_000, limits(1.5, false))).reason())
                .isEqualTo(Reason.DEMAND);
    }

    @Test
    void namesTheLift() {
        assertThat(only(task(FALL, 101, SOURCE, DEMAND, limits(1.5, false))))
                .isEqualTo(rejected(Reason.LIFT, "The lift of 101 m is above its 100 m."));
        assertThat(only(task(FALL, 100, SOURCE, DEMAND, limits(1.5, false))).reason())
                .isNotEqualTo(Reason.LIFT);
    }

    @Test
    void namesTheSource() {
        assertThat(only(task(FALL, 40, 24, DEMAND, limits(1.5, false))))
                .isEqualTo(rejected(Reason.SOURCE, "The source gives 24 l/min, it needs at least 25 l/min."));
        assertThat(only(task(FALL, 40, 25, 50_000, limits(1.5, false))).reason())
                .isEqualTo(Reason.DEMAND);
    }

    @Test
    void namesThePressureOfAShutDelivery() {
        // 5 m of fall and 1348 m/s x 1.9 m/s: 26.1 bar of a pump rated 25
        Rejection rejection = only(task(FALL, 40, SOURCE, DEMAND, limits(1.88, true)));

        assertThat(rejection.reason()).isEqualTo(Reason.DRIVE_PIPE);
        assertThat(rejection.sentence()).contains("Surge in the drive pipe fails");
        assertThat(weak(task(FALL, 40, SOURCE, DEMAND, limits(1.5, true)))).satisfies(weak -> {
            assertThat(weak.reason()).isEqualTo(Reason.PRESSURE);
            assertThat(weak.sentence()).startsWith("It does not bear the pressure: it is rated 10 bar and may see 20.");
        });
        assertThat(weak(task(FALL, 40, SOURCE, 50_000, limits(1.5, false))).reason())
                .isEqualTo(Reason.DEMAND);
    }

    @Test
    void namesTheDrivePipe() {
        DesignCatalogue thin = new DesignCatalogue(
                List.of(new PricedPump(Examples.pump("Two inch", 25, 80, 50, 1), 1500)),
                List.of(new PricedPipe(Examples.steel(40), 14)),
                List.of(new PricedPipe(Examples.pe(32, "SDR 11"), 4)));

        assertThat(DesignSearch.front(task(FALL, 40, SOURCE, DEMAND, limits(1.5, false)), thin)
                        .rejected())
                .singleElement()
                .satisfies(rejection -> {
                    assertThat(rejection.reason()).isEqualTo(Reason.DRIVE_PIPE);
                    assertThat(rejection.sentence())
                            .startsWith("No drive pipe of the catalogue keeps the rules: the bore of")
                            .endsWith("is less than the pump's 50 mm.");
                });
    }

    @Test
    void namesTheDeliveryLine() {
        // 25 mm takes more than the lift over 4 km
        DesignTask far = new DesignTask(
                GroundProfile.of(0, 0, 4000, 38),
                40,
                new Head(FALL),
                Flow.ofLitresPerMinute(SOURCE),
                Flow.ofLitresPerDay(4500),
                new Length(24),
                limits(1.5, false),
                Ambient.standard());

        assertThat(only(far).reason()).isEqualTo(Reason.DELIVERY_LINE);
    }

    @Test
    void keepsTheDeadHeadOffWeakPipe() {
        // 20.8 bar against a shut delivery: SDR 11 bears 16 at most, SDR 7.4 bears 25
        DesignTask shut = task(FALL, 40, SOURCE, DEMAND, limits(1.5, true));
        DesignFront weak = DesignSearch.front(shut, catalogue("SDR 11"));
        DesignFront strong = DesignSearch.front(shut, catalogue("SDR 7.4"));

        assertThat(weak.designs()).isEmpty();
        assertThat(weak.rejected()).extracting(Rejection::reason).containsExactly(Reason.DELIVERY_LINE);
        assertThat(strong.designs()).isNotEmpty();
        assertThat(DesignSearch.front(task(FALL, 40, SOURCE, DEMAND, limits(1.5, false)), catalogue("SDR 11"))
                        .designs())
                .isNotEmpty();
    }

    /** Behind the ridge the line at rest stands under more than while running: 108 m, and PN 10 bears 102. */
    @Test
    void bearsTheLineAtRestBehindARidge() {
        GroundProfile ridge = GroundProfile.of(0, 100, 200, 148, 300, 40, 500, 138);
        DesignTask task = new DesignTask(
                ridge,
                140,
                new Head(FALL),
                Flow.ofLitresPerMinute(SOURCE),
                Flow.ofLitresPerDay(DEMAND),
                new Length(24),
                limits(1.5, false),
                Ambient.standard());

        assertThat(DesignSearch.front(task, catalogue("SDR 17")).designs()).isEmpty();
        assertThat(DesignSearch.front(task, catalogue("SDR 13.6")).designs())
                .isNotEmpty()
                .allSatisfy(design -> {
                    DeliveryLine line = new DeliveryLine(ridge, design.stretches(), List.of(Outlet.tank(500, 140)));
                    assertThat(line.under(LineLoad.of(design.delivered(), Ambient.standard()))
                                    .allChecks())
                            .extracting(Check::verdict)
                            .doesNotContain(Verdict.FAILS);
                    assertThat(design.checks()).extracting(Check::rule).contains("Lift", "Fall", "Drive flow");
                });
    }

    @Test
    void runsAsManyPumpsAsTheSourceFeeds() {
        DesignTask two = task(FALL, 40, 100, 7000, limits(1.5, false));

        assertThat(DesignSearch.front(two, catalogue("SDR 11")).designs())
                .isNotEmpty()
                .allSatisfy(design -> {
                    assertThat(design.number()).isEqualTo(2);
                    assertThat(design.drive().litresPerMinute()).isCloseTo(100, within(1e-9));
                    assertThat(design.checks()).isNotEmpty();
                });
    }

    private static Rejection only(DesignTask task) {
        return one(task, Examples.pump("Two inch", 25, 80, 50, 1));
    }

    private static Rejection weak(DesignTask task) {
        PumpModel model = Examples.pump("Two inch", 25, 80, 50, 1);
        return one(
                task,
                new PumpModel(
                        model.name(),
                        model.performance(),
                        model.leastDrive(),
                        model.mostDrive(),
                        model.leastFall(),
                        model.mostFall(),
                        model.mostLift(),
                        Pressure.ofBar(10),
                        model.driveBore()));
    }

    private static Rejection one(DesignTask task, PumpModel pump) {
        DesignCatalogue catalogue = new DesignCatalogue(
                List.of(new PricedPump(pump, 1500)),
                List.of(new PricedPipe(Examples.steel(50), 19)),
                List.of(new PricedPipe(Examples.pe(25, "SDR 7.4"), 4)));
        DesignFront front = DesignSearch.front(task, catalogue);
        assertThat(front.designs()).isEmpty();
        return front.rejected().get(0);
    }

    private static DesignCatalogue catalogue(String series) {
        return new DesignCatalogue(
                List.of(new PricedPump(Examples.pump("Two inch", 25, 80, 50, 1), 1500)),
                List.of(new PricedPipe(Examples.steel(50), 19)),
                List.of(new PricedPipe(Examples.pe(40, series), 4)));
    }

    private static Rejection rejected(Reason reason, String sentence) {
        return new Rejection("Two inch", reason, sentence);
    }

    private static DesignLimits limits(double closing, boolean shut) {
        return new DesignLimits(
                LengthRule.BORES_150_TO_1000,
                Anchorage.THROUGHOUT,
                closing,
                1.5,
                4,
                Temperature.ofCelsius(20),
                shut,
                25);
    }

    private static DesignTask task(double fall, double tank, double source, double demand, DesignLimits limits) {
        return new DesignTask(
                GroundProfile.of(0, 0, 400, tank - 2),
                tank,
                new Head(fall),
                Flow.ofLitresPerMinute(source),
                Flow.ofLitresPerDay(demand),
                new Length(24),
                limits,
                Ambient.standard());
    }
}
