package app.ramkeeper.sizing.quantity;

/** A power in watts; zero or more. */
public record Power(double watts) {

    /** Refuses NaN, infinity and less than zero. */
    public Power {
        Require.notNegative("power", watts, "W");
    }
}
