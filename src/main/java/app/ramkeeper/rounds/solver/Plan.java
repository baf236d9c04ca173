package app.ramkeeper.rounds.solver;

import java.util.Arrays;
import java.util.List;

/**
 * An answer: the jobs of each round in order, the jobs left out, and what it costs.
 *
 * @param rounds job numbers by round, in order
 * @param leftOut jobs in no round
 * @param cost travel, fit, fixed cost and prizes left out together
 */
public record Plan(int[][] rounds, List<Integer> leftOut, double cost) {

    /** A plan with nothing in it. */
    public static Plan empty(Problem problem) {
        int[][] rounds = new int[problem.rounds.length][0];
        return new Plan(
                rounds,
                java.util.stream.IntStream.range(0, problem.size()).boxed().toList(),
                Double.POSITIVE_INFINITY);
    }

    /** How many rounds have a job. */
    public long used() {
        return Arrays.stream(rounds).filter(round -> round.length > 0).count();
    }

    /** True if every job that must be in is in. */
    public boolean complete(Problem problem) {
        return leftOut.stream().noneMatch(job -> problem.jobs[job].must());
    }
}
