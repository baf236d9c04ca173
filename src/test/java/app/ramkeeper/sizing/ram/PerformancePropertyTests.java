package app.ramkeeper.sizing.ram;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.sizing.pipe.PipeRun;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Length;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

class PerformancePropertyTests {

    private static final double TINY = 1 + 1e-9;

    @Provide
    Arbitrary<Performance> performances() {
        return Arbitraries.of(Tables.hill(), Tables.even(0.6), EfficiencyCurve.EYTELWEIN, EfficiencyCurve.POCKET_BOOK);
    }

    @Property
    void moreFallNeverGivesLess(
            @ForAll("performances") Performance pump,
            @ForAll @DoubleRange(min = 1, max = 9) double fall,
            @ForAll @DoubleRange(min = 0, max = 5) double more,
            @ForAll @DoubleRange(min = 15, max = 100) double lift,
            @ForAll @Scale(7) @DoubleRange(min = 1e-4, max = 2e-3) double drive) {
        assertThat(pump.deliveredM3s(fall + more, lift, drive) * TINY)
                .isGreaterThanOrEqualTo(pump.deliveredM3s(fall, lift, drive));
    }

    @Property
    void moreLiftNeverGivesMore(
            @ForAll("performances") Performance pump,
            @ForAll @DoubleRange(min = 1, max = 9) double fall,
            @ForAll @DoubleRange(min = 0, max = 50) double more,
            @ForAll @DoubleRange(min = 10, max = 100) double lift,
            @ForAll @Scale(7) @DoubleRange(min = 1e-4, max = 2e-3) double drive) {
        assertThat(pump.deliveredM3s(fall, lift + more, drive))
                .isLessThanOrEqualTo(pump.deliveredM3s(fall, lift, drive) * TINY);
    }

    @Property
    void moreDriveFlowNeverGivesLess(
            @ForAll("performances") Performance pump,
            @ForAll @DoubleRange(min = 1, max = 9) double fall,
            @ForAll @DoubleRange(min = 10, max = 100) double lift,
            @ForAll @Scale(7) @DoubleRange(min = 1e-4, max = 2e-3) double drive,
            @ForAll @Scale(7) @DoubleRange(min = 0, max = 1e-3) double more) {
        assertThat(pump.deliveredM3s(fall, lift, drive + more) * TINY)
                .isGreaterThanOrEqualTo(pump.deliveredM3s(fall, lift, drive));
    }

    @Property
    void neverLiftsMoreEnergyThanTheFallGives(
            @ForAll("performances") Performance pump,
            @ForAll @DoubleRange(min = 1, max = 9) double fall,
            @ForAll @DoubleRange(min = 9.5, max = 200) double lift,
            @ForAll @Scale(7) @DoubleRange(min = 1e-5, max = 2e-3) double drive) {
        assertThat(pump.deliveredM3s(fall, lift, drive) * lift).isLessThanOrEqualTo(drive * fall * TINY);
    }

    @Property
    void frictionNeverHelpsAndTheDutyAgreesWithItself(
            @ForAll("performances") Performance pump,
            @ForAll @DoubleRange(min = 2, max = 8) double fall,
            @ForAll @DoubleRange(min = 12, max = 40) double lift,
            @ForAll @Scale(7) @DoubleRange(min = 4e-4, max = 1e-3) double drive,
            @ForAll @Scale(7) @DoubleRange(min = 0.015, max = 0.04) double bore) {
        PipeRun run = new PipeRun(new Length(bore), new Length(300), new Length(1e-5), 2);
        LineLoss line = LineLoss.of(List.of(run), Setups.hill().ambient());

        double delivered = DutyPoint.deliveredM3s(pump, fall, lift, drive, line);

        // where a table or a curve ends, the duty stands on the step: between what is given just below and just above
        // it
        double head = lift + line.metres(delivered);
        double free = pump.deliveredM3s(fall, lift, drive);
        assertThat(delivered).isBetween(0., free);
        assertThat(delivered)
                .isBetween(
                        pump.deliveredM3s(fall, head * (1 + 1e-6), drive) - 1e-6 * free,
                        pump.deliveredM3s(fall, head * (1 - 1e-6), drive) + 1e-5 * free);
    }

    /** Froude's law: all lengths by s makes times by sqrt s and volumes by s3, without wall friction. */
    @Property(tries = 30)
    void theBeatScalesByFroude(
            @ForAll @DoubleRange(min = 0.3, max = 4) double s, @ForAll @DoubleRange(min = 6, max = 60) double lift) {
        CycleSetup one = Setups.textbook(1.2, lift);
        CycleSetup other = new CycleSetup(
                new Head(2 * s),
                new Head(lift * s),
                new PipeRun(new Length(0.05 * s), new Length(12 * s), new Length(0), 0),
                ColumnFriction.NONE,
                700 * Math.sqrt(s),
                new WasteValve.Snap(1.2 * Math.sqrt(s), 12),
                0,
                one.ambient());
        Cycle small = RigidCycle.run(withWave(one, 700));

        Cycle large = RigidCycle.run(other);

        assertThat(large.period() / small.period() / Math.sqrt(s)).isBetween(1 - 1e-6, 1 + 1e-6);
        assertThat(large.delivered().cubicMetres() / small.delivered().cubicMetres() / (s * s * s))
                .isBetween(1 - 1e-6, 1 + 1e-6);
        assertThat(large.dAubuisson() / small.dAubuisson()).isBetween(1 - 1e-6, 1 + 1e-6);
    }

    @Property(tries = 200)
    void theBeatNeverLiftsMoreEnergyThanTheFallGives(
            @ForAll @DoubleRange(min = 0.5, max = 12) double fall,
            @ForAll @DoubleRange(min = 1.2, max = 40) double ratio,
            @ForAll @Scale(7) @DoubleRange(min = 0.002, max = 0.012) double stroke,
            @ForAll @DoubleRange(min = 5, max = 80) double force) {
        CycleSetup hill = Setups.hill();
        CycleSetup setup = new CycleSetup(
                new Head(fall),
                new Head(fall * ratio),
                hill.drive(),
                hill.friction(),
                hill.waveSpeed(),
                new WasteValve.Weighted(new Length(0.06), new Length(stroke), force, 1.2, 0.65),
                2,
                hill.ambient());

        Cycle cycle = RigidCycle.run(setup);

        assertThat(cycle.dAubuisson()).isBetween(0., 1.);
        assertThat(cycle.rankine()).isBetween(0., 1.);
        assertThat(cycle.energy().gap()).isBetween(-1e-5, 1e-5);
        assertThat(cycle.deliveredFlow()).isLessThanOrEqualTo(cycle.driveFlow());
    }

    @Property(tries = 60)
    void theBeatDeliversMoreWithMoreFallAndLessWithMoreLift(
            @ForAll @DoubleRange(min = 3, max = 6) double fall,
            @ForAll @Scale(7) @DoubleRange(min = 0.05, max = 2) double more,
            @ForAll @DoubleRange(min = 20, max = 60) double lift) {
        CycleSetup setup = Setups.snap().withLift(new Head(lift)).withFall(new Head(fall));
        Cycle base = RigidCycle.run(setup);

        assertThat(RigidCycle.run(setup.withFall(new Head(fall + more))).deliveredFlow())
                .isGreaterThanOrEqualTo(base.deliveredFlow());
        assertThat(RigidCycle.run(setup.withLift(new Head(lift + more))).deliveredFlow())
                .isLessThanOrEqualTo(base.deliveredFlow());
    }

    private static CycleSetup withWave(CycleSetup s, double wave) {
        return new CycleSetup(
                s.fall(), s.lift(), s.drive(), s.friction(), wave, s.waste(), s.deliveryValveLoss(), s.ambient());
    }
}
