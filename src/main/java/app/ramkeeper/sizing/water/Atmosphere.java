package app.ramkeeper.sizing.water;

import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Require;

/** Air pressure by height above sea. */
public final class Atmosphere {

    /** Standard pressure at sea level, absolute. */
    public static final Pressure SEA_LEVEL = new Pressure(101_325);

    private static final double LAPSE_K_PER_M = 0.0065;
    private static final double SEA_LEVEL_K = 288.15;
    private static final double EXPONENT = 5.25588;

    private Atmosphere() {}

    /**
     * Absolute air pressure of the standard atmosphere (troposphere).
     *
     * <p>p = 101325 (1 - 0.0065 z / 288.15)^5.25588. Weather moves the true value by about 2 %. Source: ISO 2533:1975,
     * Standard atmosphere; US Standard Atmosphere 1976, part 1, equation 33a. Worked value: 79 495 Pa at 2000 m.
     *
     * @param altitudeM height above sea level, -500 to 9000 m (there is no ground beyond)
     * @return absolute pressure
     * @throws app.ramkeeper.sizing.quantity.ImpossibleInput outside that range
     */
    public static Pressure at(double altitudeM) {
        Require.within("altitude", altitudeM, -500, 9000, "m");
        return SEA_LEVEL.times(Math.pow(1 - LAPSE_K_PER_M * altitudeM / SEA_LEVEL_K, EXPONENT));
    }
}
