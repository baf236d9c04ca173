package app.ramkeeper.rounds.solver;

import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Empties rounds one after another: the jobs of the round whose jobs were least often left out become absent, and a
 * step is taken when it leaves out fewer jobs, or such as were seldom left out before (absence counts).
 */
final class FewestRounds {

    private final Search search;
    private final State state;
    private final Undo undo;
    private final Recreate recreate;
    private final long[] absences;

    FewestRounds(Search search, State state, Undo undo, Ruin ruin, Recreate recreate) {
        this.search = search;
        this.state = state;
        this.undo = undo;
        this.recreate = recreate;
        this.absences = new long[state.problem.size()];
    }

    Plan run(double forRounds) {
        Plan best = state.toPlan();
        if (state.mustMissing() == 0) {
            giveUpARound();
        }
        int[] absent = search.absent();
        long weight = weight(absent);
        double current = state.cost();
        while (search.goesOn(best) && search.share() < forRounds && best.used() > leastByLoad()) {
            search.step();
            int[] next = search.absent();
            long nextWeight = weight(next);
            double cost = state.cost();
            if (next.length < absent.length
                    || nextWeight < weight
                    || (nextWeight == weight && accepts(cost, current))) {
                absent = next;
                current = cost;
                if (absent.length == 0) {
                    best = state.toPlan();
                    giveUpARound();
                    absent = search.absent();
                    current = state.cost();
                }
            } else {
                undo.rollBack();
            }
            for (int job : next) {
                absences[job]++;
            }
            weight = weight(absent);
        }
        return best;
    }

    private boolean accepts(double cost, double current) {
        return cost
                < current
                        - 0.01
                                * current
                                / (1 + state.problem.size())
                                * Math.log(1 - search.random().nextDouble());
    }

    /** Packs the used rounds to the front, without the one that is easiest to do without. */
    private void giveUpARound() {
        int[] used = IntStream.range(0, state.stops.length)
                .filter(round -> state.size[round] > 0)
                .toArray();
        int gone = IntStream.of(used)
                .boxed()
                .min(Comparator.comparingLong(this::weightOf))
                .orElseThrow();
        Plan plan = state.toPlan();
        int[][] packed = new int[state.stops.length][0];
        int count = 0;
        for (int round : used) {
            if (round != gone) {
                packed[count++] = plan.rounds()[round];
            }
        }
        state.load(new Plan(packed, plan.leftOut(), plan.cost()));
        recreate.openRounds(count);
        undo.begin();
    }

    private long weightOf(int round) {
        long sum = 0;
        for (int k = 0; k < state.size[round]; k++) {
            sum += absences[state.stops[round][k]];
        }
        return sum;
    }

    private long weight(int[] jobs) {
        long sum = 0;
        for (int job : jobs) {
            sum += absences[job];
        }
        return sum;
    }

    private double leastByLoad() {
        double load = 0;
        for (Job job : state.problem.jobs) {
            load += job.load();
        }
        return Math.ceil(load / state.problem.rounds[0].capacity() - 1e-9);
    }
}
