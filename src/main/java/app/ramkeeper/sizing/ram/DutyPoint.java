package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Noted;
import app.ramkeeper.sizing.quantity.Require;

/** Where a pump's delivery and its line's friction agree. */
public final class DutyPoint {

    private static final double SHARE = 1e-9;

    private DutyPoint() {}

    /**
     * What a pump delivers through a line.
     *
     * <p>The lift at the pump is the standing lift and what the line takes at the delivered flow. The fall counts as it
     * stands: a maker's table has its usual drive pipe in it. Worked value: even efficiency 0.6, 65 l/min, 10 m, 22 m and
     * no friction give 17.73 l/min.
     *
     * @param performance the pump's
     * @param fall more than 0
     * @param standingLift to the highest point of the line, above the pump; more than the fall
     * @param drive water entering the pump, more than 0
     * @param line what the line takes
     */
    public static Noted<Delivery> solve(
            Performance performance, Head fall, Head standingLift, Flow drive, LineLoss line) {
        RamChecks.fallAndLift(fall, standingLift);
        double q = Require.positive("drive flow", drive.cubicMetresPerSecond(), "m3/s");
        double delivered = deliveredM3s(performance, fall.metres(), standingLift.metres(), q, line);
        double lift = standingLift.metres() + line.metres(delivered);
        return new Noted<>(
                Delivery.of(q, delivered, fall.metres(), standingLift.metres()),
                performance.notes(fall.metres(), lift, q));
    }

    /** The inner loop of {@link #solve}: m, m3/s, no checks. */
    public static double deliveredM3s(
            Performance performance, double fallM, double standingLiftM, double driveM3s, LineLoss line) {
        double most = performance.deliveredM3s(fallM, standingLiftM, driveM3s);
        if (most <= 0) {
            return 0;
        }
        return Falling.zero(
                "duty point",
                q -> performance.deliveredM3s(fallM, standingLiftM + line.metres(q), driveM3s) - q,
                0,
                most,
                SHARE * most);
    }
}
