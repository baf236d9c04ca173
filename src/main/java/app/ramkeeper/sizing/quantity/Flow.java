package app.ramkeeper.sizing.quantity;

/**
 * A volume of water per time, held in m3/s; zero or more.
 *
 * <p>Worked value: 60 l/min is 0.001 m3/s, 1 l/s, 3.6 m3/h and 86 400 l/day.
 */
public record Flow(double cubicMetresPerSecond) implements Comparable<Flow> {

    /** No flow. */
    public static final Flow NONE = new Flow(0);

    private static final double MINUTE = 60;
    private static final double DAY = 86_400;

    /** Refuses NaN, infinity and less than zero. */
    public Flow {
        Require.notNegative("flow", cubicMetresPerSecond, "m3/s");
    }

    /** From litres per second. Worked value: 1 is 0.001 m3/s. */
    public static Flow ofLitresPerSecond(double value) {
        return new Flow(Require.notNegative("flow", value, "l/s") / 1000);
    }

    /** From litres per minute. Worked value: 60 is 0.001 m3/s. */
    public static Flow ofLitresPerMinute(double value) {
        return new Flow(Require.notNegative("flow", value, "l/min") / 1000 / MINUTE);
    }

    /** From litres per day of 24 hours. Worked value: 86 400 is 0.001 m3/s. */
    public static Flow ofLitresPerDay(double value) {
        return new Flow(Require.notNegative("flow", value, "l/day") / 1000 / DAY);
    }

    /** From cubic metres per hour. Worked value: 3.6 is 0.001 m3/s. */
    public static Flow ofCubicMetresPerHour(double value) {
        return new Flow(Require.notNegative("flow", value, "m3/h") / 3600);
    }

    /** In litres per second. Worked value: 1 for 0.001 m3/s. */
    public double litresPerSecond() {
        return cubicMetresPerSecond * 1000;
    }

    /** In litres per minute. Worked value: 60 for 0.001 m3/s. */
    public double litresPerMinute() {
        return cubicMetresPerSecond * 1000 * MINUTE;
    }

    /** In litres per day of 24 hours. Worked value: 86 400 for 0.001 m3/s. */
    public double litresPerDay() {
        return cubicMetresPerSecond * 1000 * DAY;
    }

    /** In cubic metres per hour. Worked value: 3.6 for 0.001 m3/s. */
    public double cubicMetresPerHour() {
        return cubicMetresPerSecond * 3600;
    }

    /** Both together. Worked value: 2 and 3 l/s are 5. */
    public Flow plus(Flow other) {
        return new Flow(cubicMetresPerSecond + other.cubicMetresPerSecond);
    }

    /** What is left after the other is taken, never less than nothing. Worked value: 3 l/s less 2 is 1; 2 less 3 is none. */
    public Flow less(Flow other) {
        return new Flow(Math.max(0, cubicMetresPerSecond - other.cubicMetresPerSecond));
    }

    /** So many times as much; the factor is zero or more. Worked value: 2 l/s by 1.5 is 3. */
    public Flow times(double factor) {
        return new Flow(cubicMetresPerSecond * Require.notNegative("factor", factor, ""));
    }

    @Override
    public int compareTo(Flow other) {
        return Double.compare(cubicMetresPerSecond, other.cubicMetresPerSecond);
    }
}
