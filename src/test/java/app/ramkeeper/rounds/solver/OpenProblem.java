package app.ramkeeper.rounds.solver;

/** Opens a problem to the yardsticks of the benchmarks, which are no part of the optimiser. */
public record OpenProblem(Problem problem) {

    public int jobs() {
        return problem.jobs.length;
    }

    public Job job(int job) {
        return problem.jobs[job];
    }

    public int rounds() {
        return problem.rounds.length;
    }

    public Round round(int round) {
        return problem.rounds[round];
    }

    public int locations() {
        return problem.locations;
    }

    public double time(int from, int to) {
        return problem.time(from, to);
    }

    public double cost(int from, int to) {
        return problem.cost(from, to);
    }

    /** What placing a job in a round costs; infinity where it must not go. */
    public double price(int job, int round) {
        return problem.fit[job][round];
    }
}
