package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.quantity.Volume;

/**
 * The beat where it can be written down: constant losses, a valve that snaps shut, no recoil.
 *
 * <p>Source: rigid-column theory (Krol 1951, Iversen 1975, Tacke 1988; from memory, derived again). They check
 * {@link RigidCycle} and serve by themselves for a first estimate. C is the sum of all loss coefficients between intake
 * and the water leaving the waste valve, in velocity heads of the drive pipe.
 *
 * @param length L of the drive pipe, more than 0
 * @param bore of the drive pipe, more than 0
 * @param fall H, more than 0
 * @param losses C, more than 0
 * @param gravity m/s2
 */
public record CycleClosedForms(Length length, Length bore, Head fall, double losses, double gravity) {

    /** Refuses a column without length, bore, fall or losses. */
    public CycleClosedForms {
        Require.positive("drive pipe length", length.metres(), "m");
        Require.positive("bore", bore.metres(), "m");
        Require.positive("fall", fall.metres(), "m");
        Require.positive("loss coefficient", losses, "");
        Require.positive("gravity", gravity, "m/s2");
    }

    /** Velocity that the column tends to, sqrt(2 g H/C), m/s. Worked value: 1.80801 for 2 m and C 12. */
    public double greatestVelocity() {
        return Math.sqrt(2 * gravity * fall.metres() / losses);
    }

    /**
     * Time to gather a velocity from rest, L Vmax/(g H) atanh(V/Vmax), s.
     *
     * <p>Worked value: 0.68897 to 1 m/s with 12 m, 2 m and C 12.
     *
     * @param velocity 0 to less than {@link #greatestVelocity()}
     */
    public double gatherSeconds(double velocity) {
        double share = share(velocity);
        double atanh = 0.5 * Math.log((1 + share) / (1 - share));
        return length.metres() * greatestVelocity() / (gravity * fall.metres()) * atanh;
    }

    /**
     * Water wasted meanwhile, -(A L Vmax2/(2 g H)) ln(1 - (V/Vmax)2). Worked value: 0.717 l with 50 mm bore.
     *
     * @param velocity 0 to less than {@link #greatestVelocity()}
     */
    public Volume waste(double velocity) {
        double share = share(velocity);
        double vmax = greatestVelocity();
        return new Volume(
                -area() * length.metres() * vmax * vmax / (2 * gravity * fall.metres()) * Math.log1p(-share * share));
    }

    /** Time to bring a backward velocity to rest, L Vmax/(g H) atan(V/Vmax), s. Worked value: 0.03058 for 0.05 m/s. */
    public double recoilSeconds(double velocity) {
        Require.notNegative("velocity", velocity, "m/s");
        return length.metres()
                * greatestVelocity()
                / (gravity * fall.metres())
                * Math.atan(velocity / greatestVelocity());
    }

    /** Water drawn back meanwhile, (A L Vmax2/(2 g H)) ln(1 + (V/Vmax)2). Worked value: 1.501 ml for 0.05 m/s. */
    public Volume drawnBack(double velocity) {
        double share = Require.notNegative("velocity", velocity, "m/s") / greatestVelocity();
        return new Volume(area()
                * length.metres()
                * Math.pow(greatestVelocity(), 2)
                / (2 * gravity * fall.metres())
                * Math.log1p(share * share));
    }

    /**
     * Water delivered while a velocity dies against the lift, without losses: A L V2/(2 g (h - H)).
     *
     * <p>Worked value: 0.1502 l for 1 m/s against 10 m.
     *
     * @param lift h above the pump, more than the fall
     */
    public Volume delivered(double velocity, Head lift) {
        Require.notNegative("velocity", velocity, "m/s");
        return new Volume(area() * length.metres() * velocity * velocity / (2 * gravity * against(lift)));
    }

    /** How long that takes, L V/(g (h - H)), s. Worked value: 0.15296 for 1 m/s against 10 m. */
    public double deliverySeconds(double velocity, Head lift) {
        Require.notNegative("velocity", velocity, "m/s");
        return length.metres() * velocity / (gravity * against(lift));
    }

    private double against(Head lift) {
        RamChecks.fallAndLift(fall, lift);
        return lift.metres() - fall.metres();
    }

    private double share(double velocity) {
        double share = velocity / greatestVelocity();
        if (!(share >= 0 && share < 1)) {
            throw new ImpossibleInput("velocity", velocity, "0 to less than " + greatestVelocity() + " m/s");
        }
        return share;
    }

    private double area() {
        return Math.PI / 4 * bore.metres() * bore.metres();
    }
}
