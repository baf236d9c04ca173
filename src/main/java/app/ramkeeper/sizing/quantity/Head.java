package app.ramkeeper.sizing.quantity;

/**
 * A height of water, in metres; may be negative (a point of the line under suction).
 *
 * <p>Worked value: 10 m of head is 98 066.5 Pa of water of 1000 kg/m3 at standard gravity.
 */
public record Head(double metres) implements Comparable<Head> {

    /** Refuses NaN and infinity. */
    public Head {
        Require.finite("head", metres, "m");
    }

    /** From metres. */
    public static Head ofMetres(double value) {
        return new Head(value);
    }

    /** Both together. Worked value: 3 m and 2 m are 5 m. */
    public Head plus(Head other) {
        return new Head(metres + other.metres);
    }

    /** This without the other; may turn negative. Worked value: 3 m without 5 m is -2 m. */
    public Head minus(Head other) {
        return new Head(metres - other.metres);
    }

    /**
     * Gauge pressure under it: density x gravity x head. Worked value: 98 066.5 Pa for 10 m, 1000 kg/m3, 9.80665 m/s2.
     *
     * @param density kg/m3, more than 0
     * @param gravity m/s2, more than 0
     */
    public Pressure pressure(double density, double gravity) {
        return new Pressure(
                Require.positive("density", density, "kg/m3") * Require.positive("gravity", gravity, "m/s2") * metres);
    }

    @Override
    public int compareTo(Head other) {
        return Double.compare(metres, other.metres);
    }
}
