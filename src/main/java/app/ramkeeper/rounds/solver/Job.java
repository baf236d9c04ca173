package app.ramkeeper.rounds.solver;

import java.util.Arrays;

/**
 * A visit to be placed.
 *
 * @param location its row in the travel matrix
 * @param service time on the spot
 * @param load what it takes of a round's capacity
 * @param prize what leaving it out costs; {@link Double#POSITIVE_INFINITY} for one that must go in
 * @param opens earliest start by period; above {@code closes} where the period is closed to it
 * @param closes latest start by period
 */
public record Job(int location, double service, double load, double prize, double[] opens, double[] closes) {

    public Job {
        if (opens.length != closes.length) {
            throw new IllegalArgumentException("opens has " + opens.length + " periods, closes " + closes.length);
        }
        if (!(service >= 0) || !(load >= 0) || !(prize >= 0)) {
            throw new IllegalArgumentException(
                    "service, load and prize must not be negative: " + service + ", " + load + ", " + prize);
        }
    }

    /** A job with the same window in every period. */
    public static Job of(
            int location, double service, double load, double prize, double opens, double closes, int periods) {
        double[] from = new double[periods];
        double[] until = new double[periods];
        Arrays.fill(from, opens);
        Arrays.fill(until, closes);
        return new Job(location, service, load, prize, from, until);
    }

    /** True if it must be in every plan. */
    public boolean must() {
        return prize == Double.POSITIVE_INFINITY;
    }
}
