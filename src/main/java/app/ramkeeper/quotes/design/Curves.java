package app.ramkeeper.quotes.design;

import app.ramkeeper.quotes.survey.Survey;
import app.ramkeeper.sizing.design.BatteryDuty;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.ram.ValveSetting;
import app.ramkeeper.sizing.ram.ValveSweep;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How a design answers the valve setting of one pump, and the source through the year.
 *
 * @param valve rising settings
 * @param source rising flows
 * @param best setting that delivers most within the dry month's water, if one does
 * @param dryLMin what may be taken in the dry month
 * @param measuredLMin what may be taken of what was measured
 */
public record Curves(
        List<AtSetting> valve,
        List<AtSource> source,
        @Nullable Double best,
        double dryLMin,
        double measuredLMin,
        List<String> notes) {

    private static final int SETTINGS = 15;
    private static final double TIGHT = 0.2, WIDE = 2.3;
    private static final int FLOWS = 14;

    /** Keeps its own copies. */
    public Curves {
        valve = List.copyOf(valve);
        source = List.copyOf(source);
        notes = List.copyOf(notes);
    }

    /**
     * One setting of the waste valve, as the velocity at which it shuts.
     *
     * @param drowned whether the dry month's water keeps the intake drowned
     */
    public record AtSetting(double closingMs, double beats, double driveLMin, double deliveredLMin, boolean drowned) {}

    /** One flow of the source, after what must stay, with as many pumps running as deliver most. */
    public record AtSource(double sourceLMin, double driveLMin, double deliveredLDay, int running) {}

    static Curves of(Survey survey, Worked worked) {
        Flow dry = survey.usable().flow();
        int pumps = worked.selection().pumps();
        ValveSweep sweep =
                ValveSweep.over(worked.setup(), TIGHT, WIDE, SETTINGS, new Flow(dry.cubicMetresPerSecond() / pumps));
        double measured = survey.measured().flow().less(survey.dry().mustStay()).litresPerMinute();
        List<AtSource> source = new ArrayList<>();
        double most = 1.15 * Math.max(measured, dry.litresPerMinute());
        for (int i = 1; i <= FLOWS; i++) {
            source.add(at(worked, most * i / FLOWS));
        }
        return new Curves(
                sweep.settings().stream().map(Curves::at).toList(),
                source,
                sweep.best().map(ValveSetting::setting).orElse(null),
                dry.litresPerMinute(),
                measured,
                sweep.notes().stream().map(note -> note.sentence()).toList());
    }

    private static AtSetting at(ValveSetting setting) {
        return new AtSetting(
                setting.setting(),
                setting.cycle().beatsPerMinute(),
                setting.cycle().driveFlow().litresPerMinute(),
                setting.cycle().deliveredFlow().litresPerMinute(),
                setting.drowned());
    }

    private static AtSource at(Worked worked, double lMin) {
        BatteryDuty duty = worked.battery().best(Flow.ofLitresPerMinute(lMin));
        double drive = duty.pumps().stream()
                .mapToDouble(p -> p.drive().litresPerMinute())
                .sum();
        return new AtSource(lMin, drive, duty.delivered().litresPerDay(), duty.running());
    }
}
