package app.ramkeeper.rounds.solver;

import java.util.List;

/**
 * What the optimiser works on: jobs, rounds, travel, and which job fits which round at what price.
 *
 * <p>The cost of a plan is the travel cost, the fit cost of each placed job, the fixed cost of each round used and of
 * its minutes, what {@link Evenness} asks, and the prize of each job left out.
 */
public final class Problem {

    final Job[] jobs;
    final Round[] rounds;
    final int locations;
    final double[] time;
    final double[] cost;
    /** By job, then round: the price of placing it there, or infinity where it must not go. */
    final double[][] fit;

    final boolean[] frozen;
    Evenness evenness;

    private Problem(List<Job> jobs, List<Round> rounds, int locations, double[] time, double[] cost, Fit fit) {
        this.jobs = jobs.toArray(Job[]::new);
        this.rounds = rounds.toArray(Round[]::new);
        this.locations = locations;
        this.time = time;
        this.cost = cost;
        this.fit = new double[this.jobs.length][this.rounds.length];
        this.frozen = new boolean[this.jobs.length];
        this.evenness = Evenness.none(this.rounds.length);
        for (int job = 0; job < this.jobs.length; job++) {
            for (int round = 0; round < this.rounds.length; round++) {
                this.fit[job][round] = fit.price(job, round);
            }
        }
    }

    /** The price of placing a job in a round: added to the plan's cost; infinity forbids it. */
    @FunctionalInterface
    public interface Fit {
        double price(int job, int round);
    }

    /**
     * Builds a problem.
     *
     * @param time travel time by from, to; need not be symmetric
     * @param cost travel cost by from, to
     * @throws IllegalArgumentException if a matrix is not square or a location is outside it
     */
    public static Problem of(List<Job> jobs, List<Round> rounds, double[][] time, double[][] cost, Fit fit) {
        int locations = time.length;
        jobs.forEach(job -> require(job.location(), locations, "job"));
        rounds.forEach(round -> {
            require(round.start(), locations, "start of a round");
            require(round.end(), locations, "end of a round");
        });
        return new Problem(jobs, rounds, locations, flat(time), flat(cost), fit);
    }

    /** Says that the optimiser must leave a job where the given plan has it. */
    public Problem freeze(int job) {
        frozen[job] = true;
        return this;
    }

    /** Says whose rounds are whose, and that their hours are to be even. */
    public Problem even(Evenness wanted) {
        evenness = wanted;
        return this;
    }

    /** How many jobs there are. */
    public int size() {
        return jobs.length;
    }

    /** What leaving the job out costs. */
    public double prize(int job) {
        return jobs[job].prize();
    }

    double time(int from, int to) {
        return time[from * locations + to];
    }

    double cost(int from, int to) {
        return cost[from * locations + to];
    }

    private static void require(int location, int locations, String what) {
        if (location < 0 || location >= locations) {
            throw new IllegalArgumentException("The " + what + " stands at location " + location + " of " + locations);
        }
    }

    private static double[] flat(double[][] matrix) {
        double[] flat = new double[matrix.length * matrix.length];
        for (int row = 0; row < matrix.length; row++) {
            if (matrix[row].length != matrix.length) {
                throw new IllegalArgumentException(
                        "Row " + row + " has " + matrix[row].length + " of " + matrix.length + " columns");
            }
            System.arraycopy(matrix[row], 0, flat, row * matrix.length, matrix.length);
        }
        return flat;
    }
}
