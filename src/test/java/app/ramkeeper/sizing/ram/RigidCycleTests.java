package app.ramkeeper.sizing.ram;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.pipe.PipeRun;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Note;
import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RigidCycleTests {

    private static final double TIGHT = 1e-6;

    @ParameterizedTest
    @CsvSource({"1.0,10", "0.5,20", "1.7,15", "1.2,40"})
    void agreesWithTheClosedFormsWhereBothExist(double closing, double liftM) {
        CycleSetup setup = Setups.textbook(closing, liftM);
        CycleClosedForms closed = Setups.closedForms();
        double recoil = Setups.G * (liftM - 2) / setup.waveSpeed();
        double afterSqueeze = Math.sqrt(closing * closing - recoil * recoil);

        Cycle cycle = RigidCycle.run(setup);

        assertThat(cycle.openSeconds())
                .isCloseTo(closed.recoilSeconds(recoil) + closed.gatherSeconds(closing), relative(cycle.openSeconds()));
        assertThat(cycle.waste().cubicMetres())
                .isCloseTo(
                        closed.waste(closing).cubicMetres()
                                - closed.drawnBack(recoil).cubicMetres(),
                        relative(cycle.waste().cubicMetres()));
        assertThat(cycle.delivered().cubicMetres())
                .isCloseTo(
                        closed.delivered(afterSqueeze, setup.lift()).cubicMetres(),
                        relative(cycle.delivered().cubicMetres()));
        assertThat(cycle.deliverySeconds())
                .isCloseTo(closed.deliverySeconds(afterSqueeze, setup.lift()), relative(cycle.deliverySeconds()));
    }

    @Test
    void accountsForTheEnergyOfABeat() {
        for (CycleSetup setup : new CycleSetup[] {Setups.hill(), Setups.textbook(1.2, 20), Setups.snap()}) {
            Cycle cycle = RigidCycle.run(setup);

            assertThat(cycle.delivers()).isTrue();
            assertThat(cycle.energy().gap()).isCloseTo(0, within(1e-6));
            assertThat(cycle.energy().lifted()).isLessThan(cycle.energy().given());
        }
    }

    /** 240 bores of 50 mm hold; 7 m are 140 and 51 m are 1020. */
    @Test
    void notesADrivePipeBeyondTheRuleOfBores() {
        assertThat(RigidCycle.run(ofLength(12)).has(Note.Code.OUTSIDE_RANGE)).isFalse();
        assertThat(RigidCycle.run(ofLength(7)).has(Note.Code.OUTSIDE_RANGE)).isTrue();
        assertThat(RigidCycle.run(ofLength(51)).has(Note.Code.OUTSIDE_RANGE)).isTrue();
    }

    private static CycleSetup ofLength(double lengthM) {
        CycleSetup setup = Setups.textbook(1, 10);
        PipeRun drive = new PipeRun(new Length(0.05), new Length(lengthM), new Length(0), 0);
        return new CycleSetup(
                setup.fall(),
                setup.lift(),
                drive,
                setup.friction(),
                setup.waveSpeed(),
                setup.waste(),
                setup.deliveryValveLoss(),
                setup.ambient());
    }

    @Test
    void beatsFasterAndShallowerWhenSetTighter() {
        Cycle tight = RigidCycle.run(Setups.hill().withSetting(0.003));
        Cycle wide = RigidCycle.run(Setups.hill().withSetting(0.006));

        assertThat(tight.beatsPerMinute()).isGreaterThan(2 * wide.beatsPerMinute());
        assertThat(tight.delivered().litres()).isLessThan(wide.delivered().litres());
        assertThat(tight.driveFlow()).isLessThan(wide.driveFlow());
        assertThat(tight.deadHead()).isLessThan(wide.deadHead());
    }

    @Test
    void keepsTheWasteValveOpenWhenTheWaterNeverGetsFastEnough() {
        Cycle cycle = RigidCycle.run(Setups.hill().withSetting(0.012));

        assertThat(cycle.outcome()).isEqualTo(Cycle.Outcome.STAYS_OPEN);
        assertThat(cycle.beatsPerMinute()).isZero();
        assertThat(cycle.deliveredFlow().cubicMetresPerSecond()).isZero();
        assertThat(cycle.driveFlow().litresPerMinute()).isBetween(200., 350.);
        assertThat(cycle.has(Note.Code.OUTSIDE_RANGE)).isTrue();
        assertThat(RigidCycle.trace(Setups.hill().withSetting(0.012))).isEmpty();
    }

    @Test
    void liftsNothingAboveWhatTheBlowReaches() {
        double blow = 1.0 * 1400 / Setups.G;

        assertThat(RigidCycle.run(Setups.textbook(1.0, 2 + 0.999 * blow)).delivers())
                .isTrue();
        Cycle cycle = RigidCycle.run(Setups.textbook(1.0, 2 + 1.001 * blow));

        assertThat(cycle.outcome()).isEqualTo(Cycle.Outcome.TOO_HIGH);
        assertThat(cycle.beatsPerMinute()).isPositive();
        assertThat(cycle.delivered().litres()).isZero();
        assertThat(cycle.has(Note.Code.OUTSIDE_RANGE)).isTrue();
        assertThat(cycle.deadHead().metres()).isCloseTo(2 + blow, within(1e-9));
        assertThat(cycle.recoilVelocity()).isCloseTo(cycle.closingVelocity(), within(1e-9));
    }

    @Test
    void raisesTheLiftByWhatTheLineTakes() {
        LineLoss line = q -> 2e7 * q * q;
        CycleSetup setup = Setups.hill();

        Cycle cycle = RigidCycle.into(line, setup);

        double loss = line.metres(cycle.deliveredFlow().cubicMetresPerSecond());
        Cycle again = RigidCycle.run(setup.withLift(new Head(30 + loss)));
        assertThat(loss).isGreaterThan(0.2);
        assertThat(again.deliveredFlow().litresPerMinute())
                .isCloseTo(cycle.deliveredFlow().litresPerMinute(), within(1e-4));
        assertThat(RigidCycle.into(LineLoss.NONE, setup).deliveredFlow())
                .isEqualTo(RigidCycle.run(setup).deliveredFlow());
    }

    @Test
    void drawsTheBeatInTime() {
        CycleSetup setup = Setups.hill();
        Cycle cycle = RigidCycle.run(setup);

        List<CyclePoint> points = RigidCycle.trace(setup);

        CyclePoint last = points.get(points.size() - 1);
        assertThat(points.get(0).velocity()).isCloseTo(-cycle.recoilVelocity(), within(1e-9));
        assertThat(last.seconds()).isCloseTo(cycle.period(), within(1e-9));
        assertThat(last.velocity()).isCloseTo(0, within(1e-6));
        assertThat(points).extracting(CyclePoint::seconds).isSorted();
        assertThat(points).extracting(CyclePoint::openShare).contains(1., 0.).allMatch(o -> o >= 0 && o <= 1);
        assertThat(points.stream().mapToDouble(CyclePoint::velocity).max().orElseThrow())
                .isGreaterThanOrEqualTo(cycle.closingVelocity() - 1e-9);
        assertThat(points.stream().mapToDouble(CyclePoint::head).max().orElseThrow())
                .isCloseTo(cycle.peak().metres(), within(1e-6));
    }

    @Test
    void repeatsItself() {
        assertThat(RigidCycle.run(Setups.hill())).isEqualTo(RigidCycle.run(Setups.hill()));
    }

    private static Offset<Double> relative(double value) {
        return within(TIGHT * value);
    }
}
