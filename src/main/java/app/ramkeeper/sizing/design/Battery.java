package app.ramkeeper.sizing.design;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.ram.Falling;
import app.ramkeeper.sizing.ram.LineLoss;
import app.ramkeeper.sizing.ram.PumpModel;
import app.ramkeeper.sizing.water.Ambient;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Pumps side by side on one delivery line, each with its own drive pipe from an intake or a drive tank.
 *
 * <p>All pumps feel the same head: the standing lift and what the line takes at the sum of their flows. What the friction
 * of a drive pipe takes at its mean flow comes off that pump's fall, for makers' tables have a short wide one in them
 * (our choice, on the careful side). The water is shared so that all running pumps stand equally far between their least
 * and greatest drive flow.
 *
 * @param units the pumps, 1 to 12
 * @param fall water level in intake or full tank above the waste valves
 * @param standingLift highest point of the line above the pumps, more than the fall
 * @param line what the common line takes
 * @param feed of the drive tank; empty if the drive pipes start at the intake itself
 * @param ambient water, gravity and air
 */
public record Battery(
        List<PumpUnit> units, Head fall, Head standingLift, LineLoss line, Optional<Feed> feed, Ambient ambient) {

    private static final int MOST_UNITS = 12;
    private static final double SHARE = 1e-9;

    /** Refuses no pumps, more than 12, and a lift not above the fall. */
    public Battery {
        units = List.copyOf(units);
        Require.within("number of pumps", units.size(), 1, MOST_UNITS, "");
        Require.positive("fall", fall.metres(), "m");
        if (standingLift.compareTo(fall) <= 0) {
            throw new ImpossibleInput("lift", standingLift.metres() + " m", "more than the fall of " + fall.metres());
        }
    }

    /**
     * What reaches the drive pipes of a source flow: no more than the feed pipe brings. Worked value: 98.8 of 300 l/min
     * through the feed of {@link Feed#capacity}.
     */
    public Flow reaching(Flow source) {
        return feed.map(pipe -> pipe.capacity(ambient))
                .filter(capacity -> capacity.compareTo(source) < 0)
                .orElse(source);
    }

    /**
     * How the battery does with certain pumps running.
     *
     * <p>Pumps that have no water for their least drive flow make the duty infeasible: it then delivers nothing. Worked
     * value: two pumps of 25 to 60 l/min and 60 % efficiency under 5 m of fall, 40 m of lift and no friction make 7.5
     * l/min of 100.
     *
     * @param source what the source gives for the pumps
     * @param running which pumps run, by index, without repeats
     */
    public BatteryDuty duty(Flow source, List<Integer> running) {
        boolean[] on = new boolean[units.size()];
        for (int index : running) {
            Require.within("index of a pump", index, 0, units.size() - 1, "");
            on[index] = true;
        }
        double[] drive = new double[units.size()];
        boolean fed = share(reaching(source).cubicMetresPerSecond(), on, drive);
        double delivered = fed ? deliveredM3s(fall.metres(), standingLift.metres(), on, drive) : 0;
        return BatteryDuty.of(this, source, on, drive, delivered, fed);
    }

    /**
     * Which pumps should run: those that together deliver most, the fewest where more add nothing; if none does, the notes
     * say what stands in the way. Worked value: one of the
     * two pumps of {@link #duty} at 40 l/min, 3 l/min delivered.
     *
     * @param source what the source gives for the pumps
     */
    public BatteryDuty best(Flow source) {
        BatteryDuty best = duty(source, List.of());
        for (List<Integer> running : choices()) {
            BatteryDuty duty = duty(source, running);
            double gain =
                    duty.delivered().cubicMetresPerSecond() - best.delivered().cubicMetresPerSecond();
            if (gain > 1e-6 * duty.delivered().cubicMetresPerSecond()) {
                best = duty;
            }
        }
        return best.running() == 0 ? best.because(whyNone(source)) : best;
    }

    /** What stands in the way of each pump by itself. */
    private List<Note> whyNone(Flow source) {
        return IntStream.range(0, units.size())
                .mapToObj(index -> duty(source, List.of(index)).notes())
                .flatMap(List::stream)
                .distinct()
                .toList();
    }

    /**
     * Which pumps should run at each source flow, in the order given. Worked value: two, one and none of those of {@link
     * #duty} at 120, 49 and 24 l/min.
     */
    public List<BatteryDuty> asTheSourceFalls(List<Flow> sources) {
        return sources.stream().map(this::best).toList();
    }

    /** All choices of pumps, fewest first. */
    private List<List<Integer>> choices() {
        List<List<Integer>> choices = new ArrayList<>();
        for (int mask = 1; mask < 1 << units.size(); mask++) {
            List<Integer> running = new ArrayList<>();
            for (int i = 0; i < units.size(); i++) {
                if ((mask >> i & 1) == 1) {
                    running.add(i);
                }
            }
            choices.add(running);
        }
        choices.sort((a, b) -> Integer.compare(a.size(), b.size()));
        return choices;
    }

    /** Drive flow of each running pump; false if there is not enough for all of them to run. */
    private boolean share(double water, boolean[] on, double[] drive) {
        double least = 0;
        double most = 0;
        for (int i = 0; i < on.length; i++) {
            if (on[i]) {
                least += units.get(i).model().leastDrive().cubicMetresPerSecond();
                most += units.get(i).model().mostDrive().cubicMetresPerSecond();
            }
        }
        if (water < least * (1 - SHARE)) {
            return false;
        }
        double part = most > least ? Math.min(1, Math.max(0, (water - least) / (most - least))) : 0;
        for (int i = 0; i < on.length; i++) {
            if (on[i]) {
                double low = units.get(i).model().leastDrive().cubicMetresPerSecond();
                double high = units.get(i).model().mostDrive().cubicMetresPerSecond();
                drive[i] = low + part * (high - low);
            }
        }
        return true;
    }

    /** The inner loop: what all pumps that run deliver together, m3/s. */
    private double deliveredM3s(double fallM, double liftM, boolean[] on, double[] drive) {
        double[] net = new double[on.length];
        for (int i = 0; i < on.length; i++) {
            net[i] = on[i] ? fallM - units.get(i).driveLossM(drive[i], ambient) : 0;
        }
        double most = sum(net, liftM, on, drive);
        if (most <= 0) {
            return 0;
        }
        return Falling.zero(
                "common head of the battery",
                q -> sum(net, liftM + line.metres(q), on, drive) - q,
                0,
                most,
                SHARE * most);
    }

    private double sum(double[] net, double lift, boolean[] on, double[] drive) {
        double sum = 0;
        for (int i = 0; i < on.length; i++) {
            if (on[i]) {
                sum += unitM3s(i, net[i], lift, drive[i]);
            }
        }
        return sum;
    }

    /** What one pump delivers at a head; nothing below its least fall or above its lift, no more above its most fall. */
    double unitM3s(int index, double netFallM, double liftM, double driveM3s) {
        PumpModel model = units.get(index).model();
        boolean outside = netFallM < model.leastFall().metres()
                || liftM > model.mostLift().metres();
        double used = Math.min(netFallM, model.mostFall().metres());
        return outside ? 0 : model.performance().deliveredM3s(used, liftM, driveM3s);
    }

    /**
     * Delivered at another fall, lift and source, m3/s; for forecasts. Where the source does not feed all pumps, the
     * greediest are stopped one after the other until it feeds the rest.
     */
    double forecastM3s(double fallM, double liftM, double sourceM3s) {
        if (liftM <= fallM) {
            return 0;
        }
        boolean[] on = new boolean[units.size()];
        double[] drive = new double[units.size()];
        return feed(sourceM3s, on, drive) ? deliveredM3s(fallM, liftM, on, drive) : 0;
    }

    /** What to know of the duty that a forecast counts on at a source flow. */
    List<Note> forecastNotes(Flow source) {
        boolean[] on = new boolean[units.size()];
        boolean fed = feed(reaching(source).cubicMetresPerSecond(), on, new double[units.size()]);
        return fed
                ? duty(
                                source,
                                IntStream.range(0, on.length)
                                        .filter(i -> on[i])
                                        .boxed()
                                        .toList())
                        .notes()
                : whyNone(source);
    }

    private boolean feed(double sourceM3s, boolean[] on, double[] drive) {
        Arrays.fill(on, true);
        for (int running = on.length; running > 0; running--) {
            if (share(sourceM3s, on, drive)) {
                return true;
            }
            int stopped = greediest(on);
            on[stopped] = false;
            drive[stopped] = 0;
        }
        return false;
    }

    private int greediest(boolean[] on) {
        int greediest = -1;
        for (int i = 0; i < on.length; i++) {
            if (on[i]
                    && (greediest < 0
                            || units.get(i)
                                            .model()
                                            .leastDrive()
                                            .compareTo(
                                                    units.get(greediest).model().leastDrive())
                                    > 0)) {
                greediest = i;
            }
        }
        return greediest;
    }
}
