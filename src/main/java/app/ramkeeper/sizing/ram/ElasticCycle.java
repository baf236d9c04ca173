package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.quantity.Require;

/**
 * The beat with pressure waves in the drive pipe, by the method of characteristics.
 *
 * <p>Water and pipe give way, so the blow runs up and down the pipe, the delivery comes in steps and the recoil makes
 * itself. Slower than {@link RigidCycle} and a check on it: the two agree on volumes to some per cent. Friction is
 * quasi-steady, column separation is a floor at the vapour pressure without a cavity's own history. Source: Wylie, E. B.
 * and Streeter, V. L. 1993, Fluid transients in systems, chapter 3 (from memory). Range: as {@link RigidCycle}.
 */
public final class ElasticCycle {

    /** Reaches that do for a drive pipe. */
    public static final int USUAL_REACHES = 24;

    private ElasticCycle() {}

    /** The settled beat with the usual number of reaches. */
    public static Cycle run(CycleSetup setup) {
        return run(setup, USUAL_REACHES);
    }

    /**
     * The settled beat.
     *
     * @param reaches parts the drive pipe is cut into, 4 to 400
     */
    public static Cycle run(CycleSetup setup, int reaches) {
        Require.within("reaches", reaches, 4, 400, "");
        return new ElasticRun(setup, reaches).settle();
    }
}
