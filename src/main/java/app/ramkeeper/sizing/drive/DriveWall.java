package app.ramkeeper.sizing.drive;

import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Require;

/** Wall of a threaded steel drive pipe under the surge. */
public final class DriveWall {

    /**
     * Allowed hoop stress of ordinary threaded tube under pulses, Pa: a third of the 195 MPa yield of EN 10255 steel. The
     * third is common practice, no source.
     */
    public static final double ALLOWED_STRESS = 65e6;

    /** Largest nominal size with a thread (EN 10226-1). */
    public static final int LARGEST_THREAD = 150;

    private DriveWall() {}

    /**
     * Depth of a pipe thread, which the wall loses: 1.162 mm to DN 20, 1.479 mm above (EN 10226-1; 14 and 11 threads an
     * inch).
     */
    public static Length threadDepth(int nominal) {
        Require.within("nominal size", nominal, 15, LARGEST_THREAD, "");
        return Length.ofMillimetres(nominal <= 20 ? 1.162 : 1.479);
    }

    /**
     * Wall that bears a pressure by Barlow's formula: p D / (2 sigma), plus the thread's depth.
     *
     * <p>Outside diameter is used, which is safe for thin and thick walls. Source: Barlow, P. 1837; as in EN 13480-3 with
     * the outside diameter. Worked value: 2.41 mm for 20 bar in DN 50 (60.3 mm) at 65 MPa with 1.479 mm of thread.
     *
     * @param peak gauge pressure, 0 or more
     * @param outside outside diameter
     * @param stress allowed hoop stress, Pa, more than 0
     * @param thread depth of thread cut into the wall, 0 where welded or flanged
     */
    public static Length wallFor(Pressure peak, Length outside, double stress, Length thread) {
        Require.notNegative("peak pressure", peak.pascals(), "Pa");
        Require.positive("allowed stress", stress, "Pa");
        return new Length(peak.pascals() * outside.metres() / (2 * stress) + thread.metres());
    }
}
