package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.quantity.Head;
import java.util.ArrayList;
import java.util.List;

/**
 * The beat in time with the water in the drive pipe as one stiff column.
 *
 * <p>Phases: the waste valve falls open, the column gathers speed, the valve is caught and shuts, the column is brought
 * up to the lift, drives water through the delivery valve until it stops, springs back. The momentum equation of
 * {@link Column} and the disc's motion are integrated to 1e-8 per step; the beat rate and the volumes come out, no
 * constant sets them. Bringing the column up to the lift stores as much energy as a velocity of g (h-H)/a carries (the
 * squeeze of water and pipe); it comes back as the recoil. That is where the wave speed enters, and why a pump whose
 * blow a V/g is less than h-H lifts nothing. The delivery side is a steady head: the pressure vessel is taken as large.
 *
 * <p>Source: rigid-column theory as in Krol, J. 1951, The automatic hydraulic ram, Proc. Inst. Mech. Eng. 165; Iversen,
 * H. W. 1975, An analysis of the hydraulic ram, J. Fluids Eng. 97; Tacke, J. H. P. M. 1988, Hydraulic rams (all from
 * memory; our form of the recoil is an energy balance). Range: none is established, for no complete measured data set
 * with beat rate was found; each result carries a note that says so. Worked values: {@link CycleClosedForms}.
 */
public final class RigidCycle {

    private RigidCycle() {}

    /**
     * The settled beat of a setup.
     *
     * @throws app.ramkeeper.sizing.quantity.NotConverged if the integration needs too many steps
     */
    public static Cycle run(CycleSetup setup) {
        return new RigidRun(setup).settle((time, state) -> {});
    }

    /**
     * The settled beat of a pump that pumps into a line: the lift grows by what the line takes at the delivered flow.
     *
     * @param setup with the standing lift, the line's friction left out
     * @param line what the line takes; the pressure vessel is taken to make the flow in it steady
     */
    public static Cycle into(LineLoss line, CycleSetup setup) {
        double standing = setup.lift().metres();
        double most = line.metres(run(setup).deliveredFlow().cubicMetresPerSecond());
        double loss = Falling.zero(
                "head of the delivery line",
                x -> line.metres(run(setup.withLift(new Head(standing + x)))
                                .deliveredFlow()
                                .cubicMetresPerSecond())
                        - x,
                0,
                most,
                1e-6 * standing);
        return run(setup.withLift(new Head(standing + loss)));
    }

    /** The settled beat drawn as points in time, for a plot; empty if the pump does not beat. */
    public static List<CyclePoint> trace(CycleSetup setup) {
        List<CyclePoint> points = new ArrayList<>();
        RigidRun run = new RigidRun(setup);
        Cycle cycle = run.settle((time, state) -> {
            if (time == 0) {
                points.clear();
            }
            points.add(run.point(time, state));
        });
        return cycle.outcome() == Cycle.Outcome.STAYS_OPEN ? List.of() : List.copyOf(points);
    }
}
