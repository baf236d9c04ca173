package app.ramkeeper.sizing.design;

import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Numbers;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Uncertain;
import app.ramkeeper.sizing.ram.Cycle;
import app.ramkeeper.sizing.ram.CycleSetup;
import app.ramkeeper.sizing.ram.DutyPoint;
import app.ramkeeper.sizing.ram.Falling;
import app.ramkeeper.sizing.ram.RigidCycle;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What to read at commissioning and at each visit.
 *
 * <p>The delivered flow's uncertainty is the model's prior ({@link Spread#MODEL_PRIOR}) and what fall, lift and drive flow
 * bring, by differences. Compare a reading by {@link Deviation#of}.
 *
 * @param driveFlow m3/s
 * @param deliveredFlow m3/s
 * @param efficiency D'Aubuisson's, of the standing lift
 * @param beats beats per minute, a band; empty if the pump's valves and drive pipe are not known or it would not beat
 * @param standing gauge pressure at the delivery side with the pump stopped and the line full
 * @param running gauge pressure at the delivery side, mean
 * @param deadHead highest gauge pressure against a shut delivery; empty as the beats
 * @param notes what was assumed
 */
public record ExpectedReadings(
        Uncertain driveFlow,
        Uncertain deliveredFlow,
        Uncertain efficiency,
        Optional<Band> beats,
        Pressure standing,
        Pressure running,
        Optional<Pressure> deadHead,
        List<Note> notes) {

    /** Share by which the computed beat may be off besides the drive flow's uncertainty; our own judgement. */
    public static final double BEAT_MARGIN = 0.15;

    private static final double TRIAL = 1e-3;

    /** From low to high. */
    public record Band(double low, double high) {

        /** Whether a reading lies in it. */
        public boolean holds(double reading) {
            return reading >= low && reading <= high;
        }
    }

    /** Keeps its own copy of the notes. */
    public ExpectedReadings {
        notes = List.copyOf(notes);
    }

    /**
     * What an install should read. Worked value: a pump of 60 % with 60 +- 2 l/min, 5 +- 0.05 m of fall and 40 m of lift
     * without friction should deliver 4.5 l/min +- 15.4 % and stand at 3.92 bar.
     */
    public static ExpectedReadings of(AsBuilt install) {
        double fall = install.fall().value();
        double lift = install.standingLift().value();
        double drive = install.drive().value();
        double delivered = delivered(install, fall, lift, drive);
        double spread = Math.hypot(
                Math.hypot(
                        delivered * Spread.MODEL_PRIOR.standardUncertainty(),
                        slope(install, delivered, 0, install.fall())),
                Math.hypot(
                        slope(install, delivered, 1, install.standingLift()),
                        slope(install, delivered, 2, install.drive())));
        double head = lift + install.line().metres(delivered);
        Uncertain flow = new Uncertain(delivered, spread);
        Uncertain efficiency = flow.times(lift / (drive * fall));
        Optional<CycleSetup> setup = install.beatAgainst(head);
        Optional<Cycle> beat = setup.flatMap(s -> at(s, drive));
        List<Note> notes = new ArrayList<>(install.model().performance().notes(fall, head, drive));
        notes.addAll(factorNotes(install.factors()));
        beat.ifPresent(cycle -> notes.addAll(cycle.notes()));
        return new ExpectedReadings(
                install.drive(),
                flow,
                efficiency,
                setup.flatMap(s -> band(s, install)),
                install.ambient().pressureOf(new Head(lift)),
                install.ambient().pressureOf(new Head(head)),
                beat.map(cycle -> install.ambient().pressureOf(cycle.deadHead())),
                notes.stream().distinct().toList());
    }

    private static double delivered(AsBuilt install, double fall, double lift, double drive) {
        double model = DutyPoint.deliveredM3s(install.model().performance(), fall, lift, drive, install.line());
        return model * install.factors().delivered();
    }

    /**
     * What the uncertainty of one input (0 fall, 1 lift, 2 drive flow) brings, by a small trial difference each way: at
     * the end of a table one way is flat, and the other counts unless nothing is delivered there.
     */
    private static double slope(AsBuilt install, double delivered, int input, Uncertain value) {
        double more = trial(install, delivered, input, value.value() * TRIAL);
        double less = trial(install, delivered, input, -value.value() * TRIAL);
        return Math.max(more, less) * value.standardUncertainty();
    }

    private static double trial(AsBuilt install, double delivered, int input, double step) {
        double fall = install.fall().value() + (input == 0 ? step : 0);
        double lift = install.standingLift().value() + (input == 1 ? step : 0);
        double drive = install.drive().value() + (input == 2 ? step : 0);
        double other = lift > fall ? delivered(install, fall, lift, drive) : 0;
        return other == 0 ? 0 : Math.abs((other - delivered) / step);
    }

    /** The beat at the valve setting that takes a drive flow. */
    private static Optional<Cycle> at(CycleSetup setup, double driveM3s) {
        double own = setup.waste().setting();
        double setting = Falling.zero(
                "valve setting",
                s -> {
                    Cycle cycle = RigidCycle.run(setup.withSetting(s));
                    return driveM3s - cycle.driveFlow().cubicMetresPerSecond();
                },
                own / 10,
                own * 4,
                own * 1e-6);
        Cycle cycle = RigidCycle.run(setup.withSetting(setting));
        double miss = Math.abs(cycle.driveFlow().cubicMetresPerSecond() / driveM3s - 1);
        return cycle.delivers() && miss < 0.01 ? Optional.of(cycle) : Optional.empty();
    }

    private static Optional<Band> band(CycleSetup setup, AsBuilt install) {
        double more = install.drive().value() + 2 * install.drive().standardUncertainty();
        double less = Math.max(install.drive().value() / 2, 2 * install.drive().value() - more);
        Optional<Cycle> slow = at(setup, more);
        Optional<Cycle> quick = at(setup, less);
        if (slow.isEmpty() || quick.isEmpty()) {
            return Optional.empty();
        }
        double factor = install.factors().beat();
        double one = slow.get().beatsPerMinute() * factor;
        double other = quick.get().beatsPerMinute() * factor;
        return Optional.of(
                new Band(Math.min(one, other) * (1 - BEAT_MARGIN), Math.max(one, other) * (1 + BEAT_MARGIN)));
    }

    private static List<Note> factorNotes(Factors factors) {
        if (factors.equals(Factors.NONE)) {
            return List.of();
        }
        return List.of(new Note(
                Note.Code.ASSUMED,
                "Delivered flow is scaled by " + Numbers.text(factors.delivered()) + " and the beat rate by "
                        + Numbers.text(factors.beat()) + ", the factors set for this install."));
    }
}
