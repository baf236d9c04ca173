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

    /** From bar. Worked value: 1 is 100 000 Pa. */
    public static Pressure ofBar(double value) {
        return new Pressure(Require.finite("pressure", value, "bar") * BAR);
    }

    /** From kilopascals. Worked value: 100 is 1 bar. */
    public static Pressure ofKilopascals(double value) {
        return new Pressure(Require.finite("pressure", value, "kPa") * 1000);
    }

    /** In bar. Worked value: 1 for 100 000 Pa. */
    public double bar() {
        return pascals / BAR;
    }

    /** In kilopascals. Worked value: 100 for 1 bar. */
    public double kilopascals() {
        return pascals / 1000;
    }

    /** Both together. Worked value: 3 and 2 bar are 5. */
    public Pressure plus(Pressure other) {
        return new Pressure(pascals + other.pascals);
    }

    /** This without the other; may turn negative. Worked value: 3 bar without 5 is -2. */
    public Pressure minus(Pressure other) {
        return new Pressure(pascals - other.pascals);
    }

    /** So many times as much. Worked value: 3 bar by 2 is 6. */
    public Pressure times(double factor) {
        return new Pressure(pascals * factor);
    }

    @Override
    public int compareTo(Pressure other) {
        return Double.compare(pascals, other.pascals);
    }
}
