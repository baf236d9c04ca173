package app.ramkeeper.sizing.quantity;

/**
 * A value with its standard uncertainty, both in the same unit.
 *
 * <p>Combination is the first-order law for independent inputs (JCGM 100:2008, Guide to the expression of uncertainty in
 * measurement, section 5.1.2). Worked value: 3 +- 0.3 plus 4 +- 0.4 is 7 +- 0.5.
 */
public record Uncertain(double value, double standardUncertainty) {

    /** Refuses NaN, infinity and an uncertainty below zero. */
    public Uncertain {
        Require.finite("value", value, "its unit");
        Require.notNegative("standard uncertainty", standardUncertainty, "of the unit");
    }

    /** A value known without doubt. */
    public static Uncertain exact(double value) {
        return new Uncertain(value, 0);
    }

    /** A value with an uncertainty given as a share of it, such as 0.05 for 5 %. Worked value: 4 with a share of 0.1 is 4 +- 0.4. */
    public static Uncertain relative(double value, double share) {
        return new Uncertain(value, Math.abs(value) * Require.notNegative("relative uncertainty", share, ""));
    }

    /** Standard uncertainty as a share of the value; infinite for a value of zero that is not exact. Worked value: 0.1 for 4 +- 0.4. */
    public double relativeUncertainty() {
        return standardUncertainty == 0 ? 0 : standardUncertainty / Math.abs(value);
    }

    /** Sum of two independent values. Worked value: 3 +- 0.3 and 4 +- 0.4 are 7 +- 0.5. */
    public Uncertain plus(Uncertain other) {
        return new Uncertain(value + other.value, Math.hypot(standardUncertainty, other.standardUncertainty));
    }

    /** Difference of two independent values. Worked value: 4 +- 0.4 less 3 +- 0.3 is 1 +- 0.5. */
    public Uncertain minus(Uncertain other) {
        return new Uncertain(value - other.value, Math.hypot(standardUncertainty, other.standardUncertainty));
    }

    /** Product of two independent values. Worked value: 3 +- 0.3 by 4 +- 0.4 is 12 +- 1.697. */
    public Uncertain times(Uncertain other) {
        return new Uncertain(
                value * other.value, Math.hypot(standardUncertainty * other.value, other.standardUncertainty * value));
    }

    /** Scaled by a factor known without doubt. Worked value: 4 +- 0.4 by -2 is -8 +- 0.8. */
    public Uncertain times(double factor) {
        return new Uncertain(value * factor, standardUncertainty * Math.abs(factor));
    }
}
