package app.ramkeeper.sizing.vessel;

import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.quantity.Volume;

/** How large a vessel must be, and how much water it gives. */
public final class VesselVolume {

    /** Gas that keeps its temperature: slow filling and emptying. */
    public static final double ISOTHERMAL = 1.0;

    /** Gas that exchanges no heat: a beat of about a second is close to it, and it asks for the larger vessel. */
    public static final double ADIABATIC = 1.4;

    private VesselVolume() {}

    /**
     * Vessel volume that keeps the swing of the delivery pressure within bounds while each beat pushes water in.
     *
     * <p>The beat's water is taken as pushed in at once, which is on the safe side. Gas at the running pressure p swings
     * between p - s/2 and p + s/2: V1 = dV / (1 - (p1/p2)^(1/n)), and the empty vessel is V1 p1/p0 by Boyle, all
     * absolute. Worked value: 2.77 l for 0.15 l a beat, charge 4.4, running 5.0 +- 0.25 bar, air 1.013 bar, n = 1.4.
     *
     * @param perBeat water delivered in one beat, more than 0
     * @param charge gauge pre-charge
     * @param running gauge delivery pressure at the vessel, at least the charge
     * @param swing allowed peak-to-peak swing, more than 0, its lower end not below the charge
     * @param air absolute air pressure
     * @param exponent of the gas, {@link #ISOTHERMAL} to {@link #ADIABATIC}
     */
    public static Volume needed(
            Volume perBeat, Pressure charge, Pressure running, Pressure swing, Pressure air, double exponent) {
        Require.positive("volume per beat", perBeat.cubicMetres(), "m3");
        Require.positive("pressure swing", swing.pascals(), "Pa");
        Require.within("gas exponent", exponent, ISOTHERMAL, ADIABATIC, "");
        Pressure half = swing.times(0.5);
        double p0 = PreCharge.absolute("charge", charge, air).pascals();
        double p1 = running.minus(half).plus(air).pascals();
        double p2 = running.plus(half).plus(air).pascals();
        if (p1 < p0) {
            throw new ImpossibleInput(
                    "pressure swing",
                    swing.bar() + " bar",
                    "so small that running pressure less half of it stays at or above the charge of " + charge.bar()
                            + " bar");
        }
        double gas = perBeat.cubicMetres() / (1 - Math.pow(p1 / p2, 1 / exponent));
        return new Volume(gas * p1 / p0);
    }

    /**
     * Water a vessel gives between two pressures, by Boyle: V p0 (1/p1 - 1/p2), absolute.
     *
     * <p>Worked value: 25.1 of a vessel of 85 (any unit of volume) charged to 28 psi, from 50 down to 30 psi at 14.7 psi
     * of air.
     *
     * @param vessel whole volume
     * @param charge gauge pre-charge, not above low
     * @param low gauge pressure when it has given its water
     * @param high gauge pressure when it is full, not below low
     * @param air absolute air pressure
     */
    public static Volume drawdown(Volume vessel, Pressure charge, Pressure low, Pressure high, Pressure air) {
        double p0 = PreCharge.absolute("charge", charge, air).pascals();
        if (charge.compareTo(low) > 0) {
            throw new ImpossibleInput(
                    "charge", charge.bar() + " bar", "at most the low pressure, " + low.bar() + " bar");
        }
        if (low.compareTo(high) > 0) {
            throw new ImpossibleInput("low pressure", low.bar() + " bar", "at most the high, " + high.bar() + " bar");
        }
        double p1 = low.plus(air).pascals();
        double p2 = high.plus(air).pascals();
        return vessel.times(p0 * (1 / p1 - 1 / p2));
    }
}
