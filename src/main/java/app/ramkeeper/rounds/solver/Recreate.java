package app.ramkeeper.rounds.solver;

import java.util.SplittableRandom;

/** Puts jobs back one by one at the cheapest place, now and then blind to a place ("blink"). */
final class Recreate {

    /** One place in so many is passed over. */
    private static final int BLINK_ONE_IN = 100;

    private final State state;
    private final Undo undo;
    private final SplittableRandom random;
    private final Problem problem;
    private final int[] twin;
    private final double[] key;
    private int openRounds;

    Recreate(State state, Undo undo, SplittableRandom random) {
        this.state = state;
        this.undo = undo;
        this.random = random;
        this.problem = state.problem;
        this.twin = twins(problem);
        this.key = new double[problem.size()];
        this.openRounds = problem.rounds.length;
    }

    /** Rounds from this number on stay empty. */
    void openRounds(int rounds) {
        openRounds = rounds;
    }

    /** Puts back as many of the jobs as fit and are worth it. */
    void run(int[] jobs) {
        order(jobs);
        for (int job : jobs) {
            place(job);
        }
    }

    /**
     * Opens a round for a job although it alone may not be worth the way there, then puts in what lies about it; the whole
     * decides. Without this a far cluster of small jobs is never reached one by one.
     */
    void open(int first, int[] about) {
        int opened = emptyRoundFor(first);
        if (opened >= 0) {
            undo.touch(opened);
            state.insert(first, opened, 0);
            run(about);
        }
    }

    private int emptyRoundFor(int job) {
        double best = Double.POSITIVE_INFINITY;
        int cheapest = -1;
        for (int round = 0; round < openRounds; round++) {
            if (state.size[round] == 0 && !emptyTwinBefore(round) && state.takes(job, round)) {
                double cost = state.insertionCost(job, round, 0);
                if (cost < best) {
                    best = cost;
                    cheapest = round;
                }
            }
        }
        return cheapest;
    }

    private void place(int job) {
        double best = problem.jobs[job].must() ? Double.POSITIVE_INFINITY : problem.jobs[job].prize() - 1e-9;
        int bestRound = -1;
        int bestPlace = -1;
        for (int round = 0; round < openRounds; round++) {
            int size = state.size[round];
            if ((size == 0 && emptyTwinBefore(round)) || !state.takes(job, round)) {
                continue;
            }
            for (int place = state.firstPlace(job, round);
                    place <= size && !state.pastClosing(job, round, place);
                    place++) {
                if (random.nextInt(BLINK_ONE_IN) == 0) {
                    continue;
                }
                double cost = state.insertionCost(job, round, place);
                if (cost < best) {
                    best = cost;
                    bestRound = round;
                    bestPlace = place;
                }
            }
        }
        if (bestRound >= 0) {
            undo.touch(bestRound);
            state.insert(job, bestRound, bestPlace);
        }
    }

    /** Of equal empty rounds only the first is looked at. */
    private boolean emptyTwinBefore(int round) {
        return twin[round] >= 0 && state.size[twin[round]] == 0;
    }

    private static int[] twins(Problem problem) {
        int[] twin = new int[problem.rounds.length];
        for (int round = 0; round < twin.length; round++) {
            twin[round] = -1;
            int before = round - 1;
            if (before >= 0
                    && problem.rounds[before].equals(problem.rounds[round])
                    && (problem.evenness.price() == 0
                            || problem.evenness.groupOf()[before]
                                    == problem.evenness.groupOf()[round])
                    && sameFit(problem, before, round)) {
                twin[round] = before;
            }
        }
        return twin;
    }

    private static boolean sameFit(Problem problem, int one, int other) {
        for (double[] fit : problem.fit) {
            if (fit[one] != fit[other]) {
                return false;
            }
        }
        return true;
    }

    private void order(int[] jobs) {
        int kind = random.nextInt(20);
        for (int job : jobs) {
            key[job] = keyOf(job, kind);
        }
        for (int i = 1; i < jobs.length; i++) {
            int job = jobs[i];
            int k = i - 1;
            while (k >= 0 && key[jobs[k]] > key[job]) {
                jobs[k + 1] = jobs[k];
                k--;
            }
            jobs[k + 1] = job;
        }
    }

    /** Random, heavy first, far first, near first, narrow window first, early first, late first, worthy first. */
    private double keyOf(int job, int kind) {
        Job visit = problem.jobs[job];
        Round first = problem.rounds[0];
        if (kind < 4) {
            return random.nextDouble();
        } else if (kind < 8) {
            return -visit.load();
        } else if (kind < 10) {
            return -problem.cost(first.start(), visit.location());
        } else if (kind < 11) {
            return problem.cost(first.start(), visit.location());
        } else if (kind < 13) {
            return visit.closes()[first.period()] - visit.opens()[first.period()];
        } else if (kind < 15) {
            return visit.opens()[first.period()];
        } else if (kind < 17) {
            return -visit.closes()[first.period()];
        }
        return visit.must()
                ? random.nextDouble()
                : -visit.prize() / (1 + visit.service()) * (0.5 + random.nextDouble());
    }
}
