package app.ramkeeper.sizing.quantity;

/**
 * A temperature in degrees Celsius, above absolute zero.
 *
 * <p>Worked value: 10 degC is 283.15 K.
 */
public record Temperature(double celsius) {

    private static final double ZERO_CELSIUS_K = 273.15;

    /** Refuses NaN, infinity and anything not above -273.15 degC. */
    public Temperature {
        if (!(celsius > -ZERO_CELSIUS_K) || celsius == Double.POSITIVE_INFINITY) {
            throw new ImpossibleInput("temperature", celsius, "more than -273.15 degC");
        }
    }

    /** From degrees Celsius. */
    public static Temperature ofCelsius(double value) {
        return new Temperature(value);
    }

    /** In kelvin. Worked value: 283.15 for 10 degC. */
    public double kelvin() {
        return celsius + ZERO_CELSIUS_K;
    }
}
