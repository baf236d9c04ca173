package app.ramkeeper.sizing.source;

import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Require;
import java.util.Arrays;
import java.util.List;

/**
 * The same thing measured several times.
 *
 * <p>Worked value: 50, 47, 51, 48, 54 s have the mean 50 s, the spread 2.74 s and a standard uncertainty of the mean of
 * 1.22 s.
 *
 * @param values at least one, each more than 0
 */
public record Readings(List<Double> values) {

    /** Refuses none, NaN, infinity and zero or less. */
    public Readings {
        if (values.isEmpty()) {
            throw new ImpossibleInput("readings", "none", "at least one");
        }
        values.forEach(value -> Require.positive("reading", value, ""));
        values = List.copyOf(values);
    }

    /** Readings one by one. */
    public static Readings of(double... values) {
        return new Readings(Arrays.stream(values).boxed().toList());
    }

    /** How many. */
    public int count() {
        return values.size();
    }

    /** Arithmetic mean. */
    public double mean() {
        return values.stream().mapToDouble(Double::doubleValue).sum() / values.size();
    }

    /** Experimental standard deviation; 0 for a single reading. */
    public double spread() {
        if (values.size() == 1) {
            return 0;
        }
        double mean = mean();
        double squares =
                values.stream().mapToDouble(v -> (v - mean) * (v - mean)).sum();
        return Math.sqrt(squares / (values.size() - 1));
    }

    /**
     * Standard uncertainty of the mean: the spread by the root of the count, never less than the instrument allows.
     *
     * <p>Source: JCGM 100:2008 section 4.2.3. With two or three readings the spread itself is poorly known, so the
     * instrument's figure is kept as a floor.
     *
     * @param instrument standard uncertainty of one reading, 0 or more
     */
    public double uncertaintyOfMean(double instrument) {
        Require.notNegative("instrument uncertainty", instrument, "");
        return Math.max(spread(), instrument) / Math.sqrt(values.size());
    }
}
