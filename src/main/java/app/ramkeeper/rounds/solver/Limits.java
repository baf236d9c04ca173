package app.ramkeeper.rounds.solver;

import java.time.Duration;
import java.util.function.BooleanSupplier;

/**
 * When to stop, and the seed.
 *
 * @param seed same seed, same iteration limit and same start give the same plan
 * @param iterations most steps
 * @param time longest time; with an iteration limit in force first, time does not touch the result
 * @param stopped asked now and then; true ends the run with the best plan so far
 */
public record Limits(long seed, long iterations, Duration time, BooleanSupplier stopped) {

    /** So many steps: repeatable. */
    public static Limits ofIterations(long seed, long iterations) {
        return new Limits(seed, iterations, Duration.ofDays(1), () -> false);
    }

    /** So much time. */
    public static Limits ofTime(long seed, Duration time) {
        return new Limits(seed, Long.MAX_VALUE, time, () -> false);
    }
}
