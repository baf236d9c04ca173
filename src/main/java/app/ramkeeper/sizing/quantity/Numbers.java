package app.ramkeeper.sizing.quantity;

import java.util.Locale;

/** Numbers in sentences: few digits, never an exponent where a person would not write one. */
public final class Numbers {

    private Numbers() {}

    /** A sentence with numbers in it, written the same in every country. */
    public static String sentence(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }

    /** A number with its unit, or alone where it has none. Worked value: "12.35 m". */
    public static String text(double value, String unit) {
        return unit.isEmpty() ? text(value) : text(value) + " " + unit;
    }

    /** Four significant digits at most, trailing zeros dropped. Worked value: 12.3456 reads "12.35". */
    public static String text(double value) {
        double size = Math.abs(value);
        if (value == 0 || size >= 1000 && size < 1e7) {
            return String.format(Locale.ROOT, "%.0f", value);
        }
        if (size >= 1e7 || size < 1e-3) {
            return String.format(Locale.ROOT, "%.3e", value);
        }
        int decimals = 3 - (int) Math.floor(Math.log10(size));
        String digits = String.format(Locale.ROOT, "%." + decimals + "f", value);
        return digits.contains(".") ? digits.replaceFirst("0+$", "").replaceFirst("\\.$", "") : digits;
    }
}
