package app.ramkeeper.sizing.line;

import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.water.Ambient;
import java.util.Comparator;
import java.util.List;

/**
 * A delivery line as it lies in the ground, from the pump to its last outlet.
 *
 * <p>Immutable; it is cut into reaches once and may then be asked for many flows.
 */
public final class DeliveryLine {

    private final GroundProfile ground;
    private final List<Stretch> stretches;
    private final List<Outlet> outlets;
    private final LineNodes nodes;

    /**
     * Puts a line together.
     *
     * @param ground profile of the route
     * @param stretches in order from the pump, the last one ending where the profile ends
     * @param outlets one or more, one of them at the end of the profile, their shares adding up to 1
     * @throws ImpossibleInput if any of that does not hold
     */
    public DeliveryLine(GroundProfile ground, List<Stretch> stretches, List<Outlet> outlets) {
        checkStretches(ground, stretches);
        checkOutlets(ground, outlets);
        this.ground = ground;
        this.stretches = List.copyOf(stretches);
        this.outlets = outlets.stream()
                .sorted(Comparator.comparingDouble(Outlet::chainageM))
                .toList();
        this.nodes = new LineNodes(ground, this.stretches, this.outlets);
    }

    /** The profile. */
    public GroundProfile ground() {
        return ground;
    }

    /** The stretches in order from the pump. */
    public List<Stretch> stretches() {
        return stretches;
    }

    /** The outlets in order from the pump. */
    public List<Outlet> outlets() {
        return outlets;
    }

    /**
     * Level that the water has to be lifted to: the highest point of the line or the highest outlet's water, m.
     *
     * <p>Worked value: 60 m for a line over a ridge of 60 m to a tank at 50 m.
     */
    public double highestLevelM() {
        double tank = outlets.stream().mapToDouble(Outlet::waterLevelM).max().orElseThrow();
        return Math.max(ground.highestM(), tank);
    }

    /**
     * Static delivery head: highest level above the pump; it counts to the highest point, not to the tank. Worked value:
     * 60 m over a ridge of 60 m to a tank at 50 m.
     */
    public Head lift() {
        return new Head(highestLevelM() - ground.pumpLevelM());
    }

    /** Length of pipe along the slope, m. Worked value: 50 m for 40 m in plan that rise 30 m. */
    public double pipeLengthM() {
        double sum = 0;
        for (int i = 0; i < nodes.stretch.length; i++) {
            sum += nodes.lengthOf(i);
        }
        return sum;
    }

    /**
     * Head that the pump must deliver against at a flow, m: lift and friction, air let in at high points.
     *
     * <p>Quick and without notes, for solving the common head of several pumps; {@link #under(LineLoad)} tells the whole.
     * It never falls as the flow rises.
     *
     * @param deliveredM3s flow leaving the pump, m3/s, 0 or more
     */
    public double headAtPumpM(double deliveredM3s, Ambient ambient) {
        Require.notNegative("delivered flow", deliveredM3s, "m3/s");
        double nu = ambient.water().kinematicViscosity();
        return nodes.gradeAtPump(deliveredM3s, nu, ambient.gravity()) - ground.pumpLevelM();
    }

    /** All heads, checks and advice for a load. */
    public LineResult under(LineLoad load) {
        return new LineReport(this, nodes, load).result();
    }

    private static void checkStretches(GroundProfile ground, List<Stretch> stretches) {
        if (stretches.isEmpty()) {
            throw new ImpossibleInput("stretches", "none", "at least one");
        }
        double from = 0;
        for (Stretch stretch : stretches) {
            if (!(stretch.toM() > from)) {
                throw new ImpossibleInput("end of the stretch", stretch.toM() + " m", "more than " + from + " m");
            }
            from = stretch.toM();
        }
        if (from != ground.endM()) {
            throw new ImpossibleInput(
                    "end of the last stretch", from + " m", "the end of the profile, " + ground.endM() + " m");
        }
    }

    private static void checkOutlets(GroundProfile ground, List<Outlet> outlets) {
        double shares = 0;
        double furthest = 0;
        for (Outlet outlet : outlets) {
            Require.within("chainage of " + outlet.name(), outlet.chainageM(), 0, ground.endM(), "m");
            furthest = Math.max(furthest, outlet.chainageM());
            shares += outlet.share();
        }
        if (furthest != ground.endM()) {
            throw new ImpossibleInput(
                    "furthest outlet", furthest + " m", "one at the end of the profile, " + ground.endM() + " m");
        }
        if (Math.abs(shares - 1) > 1e-6) {
            throw new ImpossibleInput("sum of the outlets' shares", shares, "1");
        }
    }
}
