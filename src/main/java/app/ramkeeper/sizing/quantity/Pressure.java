package app.ramkeeper.sizing.quantity;

/**
 * A pressure in pascals. It is a gauge pressure unless a method says absolute, so it may be negative.
 *
 * <p>Worked value: 1 bar is 100 000 Pa and 100 kPa.
 */
public record Pressure(double pascals) implements Comparable<Pressure> {

    /** No gauge pressure. */
    public static final Pressure NONE = new Pressure(0);

    private static final double BAR = 1e5;

    /** Refuses NaN and infinity. */
    public Pressure {
        Require.finite("pressure", pascals, "Pa");
    }

    /** From bar. */
    public static Pressure ofBar(double value) {
        return new Pressure(Require.finite("pressure", value, "bar") * BAR);
    }

    /** From kilopascals. */
    public static Pressure ofKilopascals(double value) {
        return new Pressure(Require.finite("pressure", value, "kPa") * 1000);
    }

    /** In bar. */
    public double bar() {
        return pascals / BAR;
    }

    /** In kilopascals. */
    public double kilopascals() {
        return pascals / 1000;
    }

    /** Both together. */
    public Pressure plus(Pressure other) {
        return new Pressure(pascals + other.pascals);
    }

    /** This without the other; may turn negative. */
    public Pressure minus(Pressure other) {
        return new Pressure(pascals - other.pascals);
    }

    /** So many times as much. */
    public Pressure times(double factor) {
        return new Pressure(pascals * factor);
    }

    @Override
    public int compareTo(Pressure other) {
        return Double.compare(pascals, other.pascals);
    }
}
