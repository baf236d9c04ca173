package app.ramkeeper.sizing.quantity;

/** Guards for raw numbers: each returns its value or throws {@link ImpossibleInput}. */
public final class Require {

    private Require() {}

    /** Any number that is not NaN and not infinite. */
    public static double finite(String argument, double value, String unit) {
        if (!Double.isFinite(value)) {
            throw new ImpossibleInput(argument, value, "a number in " + unit);
        }
        return value;
    }

    /** More than zero. */
    public static double positive(String argument, double value, String unit) {
        if (!(value > 0) || value == Double.POSITIVE_INFINITY) {
            throw new ImpossibleInput(argument, value, "more than 0 " + unit);
        }
        return value;
    }

    /** Zero or more. */
    public static double notNegative(String argument, double value, String unit) {
        if (!(value >= 0) || value == Double.POSITIVE_INFINITY) {
            throw new ImpossibleInput(argument, value, "0 " + unit + " or more");
        }
        return value;
    }

    /** From low to high, both included. */
    public static double within(String argument, double value, double low, double high, String unit) {
        if (!(value >= low && value <= high)) {
            throw new ImpossibleInput(argument, value, low + " to " + high + " " + unit);
        }
        return value;
    }

    /** From low to high, both included. */
    public static int within(String argument, int value, int low, int high, String unit) {
        if (value < low || value > high) {
            throw new ImpossibleInput(argument, value, low + " to " + high + " " + unit);
        }
        return value;
    }
}
