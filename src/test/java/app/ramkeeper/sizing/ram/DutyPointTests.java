package app.ramkeeper.sizing.ram;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.pipe.PipeRun;
import app.ramkeeper.sizing.quantity.Check;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.NotConverged;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Noted;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Verdict;
import app.ramkeeper.sizing.water.Ambient;
import java.util.List;
import org.junit.jupiter.api.Test;

class DutyPointTests {

    private static final Flow DRIVE = Flow.ofLitresPerMinute(40);

    /** Even efficiency and a loss that doubles the lift: by hand q = eta Q H/(2 h). */
    @Test
    void findsTheFlowWhereLiftAndFrictionAgree() {
        double half = 0.6 * DRIVE.cubicMetresPerSecond() * 4 / 40;
        LineLoss line = q -> 20 * q / half;

        Noted<Delivery> duty = DutyPoint.solve(Tables.even(0.6), new Head(4), new Head(20), DRIVE, line);

        assertThat(duty.value().delivered().cubicMetresPerSecond()).isCloseTo(half, within(1e-9 * half));
        assertThat(duty.value().dAubuisson()).isCloseTo(0.3, within(1e-9));
    }

    @Test
    void notesTellOfTheLiftWithFriction() {
        double line = 65;
        Noted<Delivery> duty = DutyPoint.solve(Tables.hill(), new Head(4), new Head(20), DRIVE, q -> line);

        assertThat(duty.value().delivered()).isEqualTo(Flow.NONE);
        assertThat(DutyPoint.solve(Tables.hill(), new Head(4), new Head(90), DRIVE, LineLoss.NONE)
                        .has(Note.Code.OUTSIDE_RANGE))
                .isTrue();
    }

    @Test
    void refusesWhatCannotBe() {
        assertThatThrownBy(() -> DutyPoint.solve(Tables.hill(), new Head(4), new Head(4), DRIVE, LineLoss.NONE))
                .isInstanceOf(ImpossibleInput.class);
        assertThatThrownBy(() -> DutyPoint.solve(Tables.hill(), new Head(4), new Head(20), Flow.NONE, LineLoss.NONE))
                .hasMessageContaining("drive flow");
    }

    @Test
    void addsRunsOfPipe() {
        PipeRun one = new PipeRun(new Length(0.03), new Length(100), new Length(1e-5), 1);
        PipeRun two = new PipeRun(new Length(0.04), new Length(200), new Length(1e-5), 2);
        Ambient ambient = Ambient.standard();
        Flow flow = Flow.ofLitresPerMinute(20);

        double both = LineLoss.of(List.of(one, two), ambient).metres(flow.cubicMetresPerSecond());

        assertThat(both)
                .isCloseTo(
                        one.headLoss(flow, ambient).value().metres()
                                + two.headLoss(flow, ambient).value().metres(),
                        within(1e-12));
        assertThat(LineLoss.NONE.metres(1)).isZero();
    }

    @Test
    void findsZerosOfFallingFunctions() {
        assertThat(Falling.zero("x", x -> 4 - x * x, 0, 5, 1e-10)).isCloseTo(2, within(1e-9));
        assertThat(Falling.zero("x", x -> -1, 0, 5, 1e-10)).isZero();
        assertThat(Falling.zero("x", x -> 1, 0, 5, 1e-10)).isEqualTo(5);
        assertThat(Falling.zero("x", x -> Math.exp(-x) - 1e-3, 0, 50, 1e-10)).isCloseTo(Math.log(1000), within(1e-6));
        assertThat(Falling.zero("x", x -> x < 1.25 ? 3 : -0.1, 0, 5, 1e-6)).isCloseTo(1.25, within(1e-4));
        assertThatThrownBy(() -> Falling.zero("the wanted", x -> x == 5 ? -1 : Double.NaN, 0, 5, 1e-12))
                .isInstanceOf(NotConverged.class)
                .hasMessageContaining("the wanted");
    }

    @Test
    void holdsAModelToItsLimits() {
        PumpModel model = model();

        assertThat(model.checks(new Head(4), new Head(50), DRIVE))
                .extracting(Check::verdict)
                .doesNotContain(Verdict.FAILS);
        assertThat(failing(model, 1.9, 50, 40)).containsExactly("Fall");
        assertThat(failing(model, 8.1, 50, 40)).containsExactly("Fall");
        assertThat(failing(model, 4, 81, 40)).containsExactly("Lift");
        assertThat(failing(model, 4, 50, 19)).containsExactly("Drive flow");
        assertThat(failing(model, 4, 50, 61)).containsExactly("Drive flow");
        assertThat(model.numberFor(Flow.ofLitresPerMinute(60))).isEqualTo(1);
        assertThat(model.numberFor(Flow.ofLitresPerMinute(61))).isEqualTo(2);
    }

    @Test
    void refusesAModelUpsideDown() {
        PumpModel m = model();
        assertThatThrownBy(() -> new PumpModel(
                        "x",
                        m.performance(),
                        m.mostDrive(),
                        m.leastDrive(),
                        m.leastFall(),
                        m.mostFall(),
                        m.mostLift(),
                        m.rating(),
                        m.driveBore()))
                .hasMessageContaining("greatest drive flow is 20.0 l/min");
        assertThatThrownBy(() -> new PumpModel(
                        "x",
                        m.performance(),
                        m.leastDrive(),
                        m.mostDrive(),
                        m.mostFall(),
                        m.leastFall(),
                        m.mostLift(),
                        m.rating(),
                        m.driveBore()))
                .hasMessageContaining("highest fall is 2.0 m");
    }

    private static List<String> failing(PumpModel model, double fall, double lift, double drive) {
        return model.checks(new Head(fall), new Head(lift), Flow.ofLitresPerMinute(drive)).stream()
                .filter(check -> check.verdict() == Verdict.FAILS)
                .map(Check::rule)
                .toList();
    }

    static PumpModel model() {
        return new PumpModel(
                "Two inch",
                Tables.hill(),
                Flow.ofLitresPerMinute(20),
                Flow.ofLitresPerMinute(60),
                new Head(2),
                new Head(8),
                new Head(80),
                Pressure.ofBar(16),
                Length.ofMillimetres(50));
    }
}
