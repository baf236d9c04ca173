package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Require;

/**
 * The two efficiencies of a ram, which differ: always say which.
 *
 * <p>Source of both definitions: d'Aubuisson de Voisins, J. F. 1840, Traite d'hydraulique, and Rankine, W. J. M. 1859, A
 * manual of the steam engine and other prime movers (both from memory); worked problem in civinnovate.com 2025-07-31.
 */
public final class Efficiency {

    private Efficiency() {}

    /**
     * D'Aubuisson's q h/(Q H). Worked value: 0.45 for Q 30, q 3, H 4 m, h 18 m.
     *
     * @param drive all water entering the pump, more than 0
     * @param delivered not more than the drive flow
     * @param fall H, more than 0
     * @param lift h above the pump, more than the fall
     */
    public static double dAubuisson(Flow drive, Flow delivered, Head fall, Head lift) {
        check(drive, delivered, fall, lift);
        return dAubuisson(drive.cubicMetresPerSecond(), delivered.cubicMetresPerSecond(), fall.metres(), lift.metres());
    }

    /**
     * Rankine's q (h-H)/((Q-q) H). Worked value: 0.3889 for Q 30, q 3, H 4 m, h 18 m.
     *
     * @param drive all water entering the pump, more than the delivered flow
     * @param delivered less than the drive flow
     * @param fall H, more than 0
     * @param lift h above the pump, more than the fall
     */
    public static double rankine(Flow drive, Flow delivered, Head fall, Head lift) {
        check(drive, delivered, fall, lift);
        return rankine(drive.cubicMetresPerSecond(), delivered.cubicMetresPerSecond(), fall.metres(), lift.metres());
    }

    /**
     * Flow delivered at a D'Aubuisson efficiency: q = eta Q H/h.
     *
     * <p>The trade's rule. Worked value: 17.73 l/min for 65 l/min, 10 m, 22 m and 0.6.
     *
     * @param efficiency 0 to 1
     */
    public static Flow delivered(double efficiency, Flow drive, Head fall, Head lift) {
        Require.within("efficiency", efficiency, 0, 1, "");
        RamChecks.fallAndLift(fall, lift);
        return drive.times(efficiency * fall.metres() / lift.metres());
    }

    /**
     * Drive flow needed to deliver a flow at a D'Aubuisson efficiency: Q = q h/(eta H).
     *
     * <p>Worked value: 65 l/min for 17.73 l/min, 10 m, 22 m and 0.6.
     *
     * @param efficiency more than 0, at most 1
     */
    public static Flow driveFor(double efficiency, Flow delivered, Head fall, Head lift) {
        Require.within("efficiency", efficiency, 1e-6, 1, "");
        RamChecks.fallAndLift(fall, lift);
        return delivered.times(lift.metres() / (efficiency * fall.metres()));
    }

    /**
     * Drive flow from what is delivered and the share of it that is delivered, q/Q.
     *
     * <p>Worked value: 14.63 for 7.75 delivered and a share of 0.52961.
     *
     * @param share more than 0, at most 1
     */
    public static Flow driveForShare(double share, Flow delivered) {
        Require.within("delivered share", share, 1e-6, 1, "");
        return delivered.times(1 / share);
    }

    static double dAubuisson(double drive, double delivered, double fall, double lift) {
        return drive == 0 ? 0 : delivered * lift / (drive * fall);
    }

    static double rankine(double drive, double delivered, double fall, double lift) {
        return drive == 0 ? 0 : delivered * (lift - fall) / ((drive - delivered) * fall);
    }

    private static void check(Flow drive, Flow delivered, Head fall, Head lift) {
        RamChecks.fallAndLift(fall, lift);
        Require.positive("drive flow", drive.cubicMetresPerSecond(), "m3/s");
        if (delivered.compareTo(drive) >= 0) {
            throw new ImpossibleInput(
                    "delivered flow",
                    delivered.litresPerMinute() + " l/min",
                    "less than the drive flow of " + drive.litresPerMinute() + " l/min");
        }
    }
}
