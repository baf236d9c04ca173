package app.ramkeeper.sizing.design;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Numbers;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * How a battery does at one source flow.
 *
 * @param source what the source gives for the pumps
 * @param pumps what each running pump takes and gives
 * @param delivered by all together
 * @param head common head at the pumps, the line's friction counted in
 * @param feedLoss head the feed pipe takes; nothing without a drive tank
 * @param spilled what the pumps leave of the source
 * @param notes what to know of it
 */
public record BatteryDuty(
        Flow source, List<PumpDuty> pumps, Flow delivered, Head head, Head feedLoss, Flow spilled, List<Note> notes) {

    /**
     * One running pump.
     *
     * @param index its place in the battery
     * @param drive its drive flow
     * @param delivered its share of what is delivered
     * @param netFall fall less what its drive pipe takes
     */
    public record PumpDuty(int index, Flow drive, Flow delivered, Head netFall) {}

    /** Keeps its own copies. */
    public BatteryDuty {
        pumps = List.copyOf(pumps);
        notes = List.copyOf(notes);
    }

    /** How many run. */
    public int running() {
        return pumps.size();
    }

    BatteryDuty because(List<Note> more) {
        return new BatteryDuty(
                source,
                pumps,
                delivered,
                head,
                feedLoss,
                spilled,
                Stream.concat(notes.stream(), more.stream()).distinct().toList());
    }

    static BatteryDuty of(Battery battery, Flow source, boolean[] on, double[] drive, double delivered, boolean fed) {
        double head = battery.standingLift().metres() + battery.line().metres(delivered);
        List<Note> notes = new ArrayList<>();
        List<PumpDuty> pumps = new ArrayList<>();
        double taken = 0;
        int asked = 0;
        for (int i = 0; i < on.length; i++) {
            asked += on[i] ? 1 : 0;
            if (on[i] && fed) {
                PumpUnit unit = battery.units().get(i);
                double net = battery.fall().metres() - unit.driveLossM(drive[i], battery.ambient());
                double share = battery.unitM3s(i, net, head, drive[i]);
                taken += drive[i];
                pumps.add(new PumpDuty(i, new Flow(drive[i]), new Flow(share), new Head(net)));
                notes.addAll(unit.model().performance().notes(net, head, drive[i]));
                Head most = unit.model().mostFall();
                if (battery.fall().compareTo(most) > 0) {
                    notes.add(Note.outside(
                            unit.model().name(),
                            "fall",
                            battery.fall().metres(),
                            unit.model().leastFall().metres(),
                            most.metres(),
                            "m"));
                }
                if (share == 0) {
                    notes.add(outsideLimits(i, unit, net, head));
                }
            }
        }
        if (!fed) {
            notes.add(new Note(
                    Note.Code.OUTSIDE_RANGE,
                    asked == 1
                            ? "The source does not give this pump its least drive flow."
                            : "The source does not give these pumps their least drive flow: fewer should run."));
        }
        Flow reaching = battery.reaching(source);
        if (reaching.compareTo(source) < 0) {
            notes.add(new Note(
                    Note.Code.OUTSIDE_RANGE,
                    "The feed pipe brings " + Numbers.text(reaching.litresPerMinute()) + " l/min of the source's "
                            + Numbers.text(source.litresPerMinute()) + " l/min; the rest spills."));
        }
        Flow drawn = new Flow(taken);
        Head feedLoss = battery.feed()
                .map(feed -> feed.pipe().headLoss(drawn, battery.ambient()).value())
                .orElse(new Head(0));
        return new BatteryDuty(
                source,
                pumps,
                new Flow(delivered),
                new Head(head),
                feedLoss,
                source.less(drawn),
                notes.stream().distinct().toList());
    }

    private static Note outsideLimits(int index, PumpUnit unit, double net, double head) {
        return new Note(
                Note.Code.OUTSIDE_RANGE,
                "Pump " + (index + 1) + ", " + unit.model().name() + ", delivers nothing at " + Numbers.text(net)
                        + " m of net fall and " + Numbers.text(head) + " m of head.");
    }
}
