package app.ramkeeper.sizing.quantity;

/** A length, bore, wall or height above sea, in metres; zero or more. */
public record Length(double metres) implements Comparable<Length> {

    /** Refuses NaN, infinity and less than zero. */
    public Length {
        Require.notNegative("length", metres, "m");
    }

    /** From metres. */
    public static Length ofMetres(double value) {
        return new Length(value);
    }

    /** From millimetres. Worked value: 50 is 0.05 m. */
    public static Length ofMillimetres(double value) {
        return new Length(Require.notNegative("length", value, "mm") / 1000);
    }

    /** In millimetres. Worked value: 50 for 0.05 m. */
    public double millimetres() {
        return metres * 1000;
    }

    @Override
    public int compareTo(Length other) {
        return Double.compare(metres, other.metres);
    }
}
