package app.ramkeeper.rounds.solver;

import java.util.Arrays;
import java.util.SplittableRandom;

/** Simulated annealing over ruin and recreate. */
public final class Search {

    private static final double HOT = 10;
    private static final double COLD = 0.1;
    private static final int RETRIED = 12;

    /** Every so many steps a round is opened for a job left out and for at most so many others about it. */
    private static final int OPENED_ONE_IN = 100;

    private static final int ABOUT = 60;

    private static final int[] NOBODY = {};

    private final Problem problem;
    private final Limits limits;
    private final Progress progress;
    private final SplittableRandom random;
    private final State state;
    private final Undo undo;
    private final Ruin ruin;
    private final Recreate recreate;

    private long iteration;
    private final long began = System.nanoTime();
    private double share;
    private long lastTold;

    public Search(Problem problem, Limits limits, Progress progress) {
        this.problem = problem;
        this.limits = limits;
        this.progress = progress;
        this.random = new SplittableRandom(limits.seed());
        this.state = new State(problem);
        this.undo = new Undo(state);
        this.ruin = new Ruin(state, undo, random);
        this.recreate = new Recreate(state, undo, random);
    }

    /**
     * Improves a plan.
     *
     * @param start where to begin; {@link Plan#empty} for from scratch
     * @param warmth 1 for a search from scratch; less keeps nearer to the start, 0 only ever improves
     * @return the best plan found; {@link Plan#complete} says whether every must is in
     */
    public Plan improve(Plan start, double warmth) {
        construct(start);
        return problem.size() == 0 ? state.toPlan() : anneal(warmth, 0);
    }

    /**
     * Finds the fewest rounds first, then the cheapest plan with that many: for rounds that are all alike.
     *
     * @param forRounds share of the limits spent at most on the first phase
     */
    public Plan fewestRounds(double forRounds) {
        construct(Plan.empty(problem));
        Plan best = new FewestRounds(this, state, undo, ruin, recreate).run(forRounds);
        state.load(best);
        recreate.openRounds((int) best.used());
        return anneal(1, share);
    }

    private void construct(Plan start) {
        state.load(start);
        undo.begin();
        recreate.run(absent());
    }

    int[] absent() {
        int[] all = new int[problem.size()];
        int count = 0;
        for (int job = 0; job < all.length; job++) {
            if (!state.placed(job)) {
                all[count++] = job;
            }
        }
        return Arrays.copyOf(all, count);
    }

    private Plan anneal(double warmth, double from) {
        double scale = scale();
        double current = score();
        double best = current;
        Plan bestPlan = state.toPlan();
        while (goesOn(bestPlan)) {
            double through = Math.min(1, (share - from) / Math.max(1e-9, 1 - from));
            double temperature = warmth * HOT * scale * Math.pow(COLD / HOT, through);
            step();
            double next = score();
            if (next < current - temperature * Math.log(1 - random.nextDouble())) {
                current = next;
                if (current < best - 1e-9) {
                    best = current;
                    bestPlan = state.toPlan();
                }
            } else {
                undo.rollBack();
            }
        }
        progress.best(bestPlan, 1, iteration);
        return bestPlan;
    }

    /** One ruin and one recreate, with some of the jobs left out before that lie near. */
    void step() {
        undo.begin();
        int[] absent = random.nextInt(OPENED_ONE_IN) == 0 ? absent() : NOBODY;
        if (absent.length > 0) {
            int first = absent[random.nextInt(absent.length)];
            recreate.open(first, about(first));
        } else {
            ruin.run();
            recreate.run(withSomeLeftOut(ruin.removed()));
        }
    }

    /** The nearest jobs left out. */
    private int[] about(int job) {
        return Arrays.stream(ruin.near(job))
                .filter(other -> other != job && !state.placed(other))
                .limit(ABOUT)
                .toArray();
    }

    private int[] withSomeLeftOut(int[] removed) {
        int[] all = Arrays.copyOf(removed, removed.length + RETRIED);
        int count = removed.length;
        boolean[] taken = new boolean[problem.size()];
        for (int job : removed) {
            taken[job] = true;
        }
        for (int job : ruin.near()) {
            if (count == all.length) {
                break;
            }
            if (!state.placed(job) && !taken[job] && (problem.jobs[job].must() || random.nextInt(3) > 0)) {
                all[count++] = job;
            }
        }
        return Arrays.copyOf(all, count);
    }

    /** A must that is left out weighs more than anything else. */
    double score() {
        return state.cost() + state.mustMissing() * 1e9;
    }

    /** Counts a step and looks at the clock now and then; false when it is time to stop. */
    boolean goesOn(Plan bestPlan) {
        if (iteration++ % 64 == 0) {
            double byTime = (System.nanoTime() - began)
                    / (double) Math.max(1, limits.time().toNanos());
            share = Math.max(
                    (double) iteration / limits.iterations(), limits.iterations() == Long.MAX_VALUE ? byTime : 0);
            if (share >= 1 || byTime >= 1 || limits.stopped().getAsBoolean()) {
                return false;
            }
            tell(bestPlan);
        }
        return iteration <= limits.iterations();
    }

    private void tell(Plan bestPlan) {
        long now = System.nanoTime();
        if (now - lastTold > 300_000_000L) {
            lastTold = now;
            progress.best(bestPlan, share, iteration);
        }
    }

    double share() {
        return share;
    }

    SplittableRandom random() {
        return random;
    }

    /** What one leg costs on average; without travel cost, what one left-out job costs. */
    private double scale() {
        double travel = 0;
        int legs = 0;
        for (int round = 0; round < state.stops.length; round++) {
            int at = problem.rounds[round].start();
            for (int k = 0; k < state.size[round]; k++) {
                int next = problem.jobs[state.stops[round][k]].location();
                travel += problem.cost(at, next);
                at = next;
                legs++;
            }
        }
        double prizes = Arrays.stream(problem.jobs)
                .filter(job -> !job.must())
                .mapToDouble(Job::prize)
                .average()
                .orElse(0);
        return Math.max(legs == 0 ? 0 : travel / legs, prizes / 20) + 1e-9;
    }
}
