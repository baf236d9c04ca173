package app.ramkeeper.sizing.quantity;

/** A volume in cubic metres; zero or more. Worked value: 250 l is 0.25 m3. */
public record Volume(double cubicMetres) implements Comparable<Volume> {

    /** Refuses NaN, infinity and less than zero. */
    public Volume {
        Require.notNegative("volume", cubicMetres, "m3");
    }

    /** From cubic metres. */
    public static Volume ofCubicMetres(double value) {
        return new Volume(value);
    }

    /** From litres. Worked value: 250 is 0.25 m3. */
    public static Volume ofLitres(double value) {
        return new Volume(Require.notNegative("volume", value, "l") / 1000);
    }

    /** In litres. Worked value: 250 for 0.25 m3. */
    public double litres() {
        return cubicMetres * 1000;
    }

    /** Both together. Worked value: 1 and 2 l are 3. */
    public Volume plus(Volume other) {
        return new Volume(cubicMetres + other.cubicMetres);
    }

    /** So many times as much; the factor is zero or more. Worked value: 2 l by 2 is 4. */
    public Volume times(double factor) {
        return new Volume(cubicMetres * Require.notNegative("factor", factor, ""));
    }

    @Override
    public int compareTo(Volume other) {
        return Double.compare(cubicMetres, other.cubicMetres);
    }
}
