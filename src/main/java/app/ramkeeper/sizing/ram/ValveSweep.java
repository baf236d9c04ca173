package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Numbers;
import app.ramkeeper.sizing.quantity.Require;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What turning the valve setting does: beat, drive flow and delivered flow from tight to wide open.
 *
 * <p>Wider gives a slower, deeper beat, more drive flow and more delivered up to an optimum; the optimum counts only
 * while the source feeds it. Beyond the dry flow the level at the intake falls. A ram does not slow down to what there
 * is: the mean velocity between rest and closing hardly depends on the fall, so with less fall it takes no less (a test
 * shows it). The level falls until the drive pipe draws air and the pump stops; such settings are marked.
 *
 * @param settings rising
 * @param best the setting that delivers most with the intake drowned; none if no setting does
 * @param notes what to know of it
 */
public record ValveSweep(List<ValveSetting> settings, Optional<ValveSetting> best, List<Note> notes) {

    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;
    private static final int REFINEMENTS = 30;

    /** Keeps its own copies. */
    public ValveSweep {
        settings = List.copyOf(settings);
        notes = List.copyOf(notes);
    }

    /**
     * Sweeps settings evenly and refines the best between its neighbours (golden section).
     *
     * @param setup the pump; its own setting does not matter
     * @param low least setting, more than 0 ({@link WasteValve#setting} says of what)
     * @param high greatest setting, more than the least
     * @param count how many, 3 to 500
     * @param dryFlow what the source gives in the dry season, less what must stay in the stream
     */
    public static ValveSweep over(CycleSetup setup, double low, double high, int count, Flow dryFlow) {
        Require.positive("least setting", low, "");
        Require.within("number of settings", count, 3, 500, "");
        if (!(high > low) || Double.isInfinite(high)) {
            throw new ImpossibleInput("greatest setting", high, "more than the least, " + low);
        }
        List<ValveSetting> settings = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            settings.add(at(setup, low + (high - low) * i / (count - 1), dryFlow));
        }
        Optional<ValveSetting> best = best(setup, settings, (high - low) / (count - 1), dryFlow);
        return new ValveSweep(settings, best, notes(settings, best, dryFlow));
    }

    private static Optional<ValveSetting> best(
            CycleSetup setup, List<ValveSetting> settings, double gap, Flow dryFlow) {
        ValveSetting best = settings.get(0);
        for (ValveSetting setting : settings) {
            best = worth(setting) > worth(best) ? setting : best;
        }
        double low = Math.max(settings.get(0).setting(), best.setting() - gap);
        double high = Math.min(settings.get(settings.size() - 1).setting(), best.setting() + gap);
        for (int i = 0; i < REFINEMENTS; i++) {
            ValveSetting left = at(setup, high - GOLDEN * (high - low), dryFlow);
            ValveSetting right = at(setup, low + GOLDEN * (high - low), dryFlow);
            if (worth(left) >= worth(right)) {
                high = right.setting();
                best = worth(left) > worth(best) ? left : best;
            } else {
                low = left.setting();
                best = worth(right) > worth(best) ? right : best;
            }
        }
        return best.sustained() ? Optional.of(best) : Optional.empty();
    }

    /** What is delivered if it can go on, else how much too much is drawn. */
    private static double worth(ValveSetting setting) {
        if (!setting.drowned()) {
            return -1 - setting.setting();
        }
        return setting.cycle().deliveredFlow().cubicMetresPerSecond();
    }

    /** One setting against the source. */
    public static ValveSetting at(CycleSetup setup, double setting, Flow dryFlow) {
        Cycle cycle = RigidCycle.run(setup.withSetting(setting));
        return new ValveSetting(setting, cycle, cycle.driveFlow().compareTo(dryFlow) <= 0);
    }

    private static List<Note> notes(List<ValveSetting> settings, Optional<ValveSetting> best, Flow dryFlow) {
        List<Note> notes = new ArrayList<>();
        String dry = Numbers.text(dryFlow.litresPerMinute());
        if (best.isEmpty()) {
            notes.add(new Note(
                    Note.Code.OUTSIDE_RANGE,
                    "No setting in the range delivers within the " + dry + " l/min of the dry season."));
        }
        settings.stream()
                .filter(setting -> !setting.drowned())
                .findFirst()
                .ifPresent(setting -> notes.add(new Note(
                        Note.Code.CAUTION,
                        "From a setting of about " + Numbers.text(setting.setting()) + " the pump takes more than the "
                                + dry + " l/min there are, the intake draws air and the pump stops.")));
        return notes;
    }
}
