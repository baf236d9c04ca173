package app.ramkeeper.shared;

import java.math.BigDecimal;

/** A measured quantity as it was entered: the number and its unit. */
public record Measured(BigDecimal value, Unit unit) {

    public static Measured of(String value, Unit unit) {
        return new Measured(new BigDecimal(value), unit);
    }

    /** The value in SI. */
    public double si() {
        return unit.toSi(value.doubleValue());
    }

    @Override
    public String toString() {
        return value.toPlainString() + " " + unit.symbol();
    }
}
