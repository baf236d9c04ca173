package app.ramkeeper.rounds.solver;

import java.util.Arrays;
import java.util.Comparator;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/** Takes strings of neighbouring stops out of rounds near a randomly chosen job. */
final class Ruin {

    /** Mean number of stops removed, longest string and chance of splitting it, as published. */
    private static final double MEAN_REMOVED = 10;

    private static final double LONGEST_STRING = 10;
    private static final double SPLIT = 0.5;

    /** Chance of one more stop staying inside a split string; our own, from trials on the academic files. */
    private static final double KEEP_MORE = 0.5;

    private final State state;
    private final Undo undo;
    private final SplittableRandom random;
    private final int[][] neighbours;
    private final int[] removed;
    private int removedCount;
    private int seed;

    Ruin(State state, Undo undo, SplittableRandom random) {
        this.state = state;
        this.undo = undo;
        this.random = random;
        this.neighbours = neighbours(state.problem);
        this.removed = new int[state.problem.size()];
    }

    /** Jobs from near to far, itself first, by the cost of travel both ways. */
    private static int[][] neighbours(Problem problem) {
        int jobs = problem.size();
        int[][] sorted = new int[jobs][];
        double[] distance = new double[jobs];
        for (int job = 0; job < jobs; job++) {
            int here = problem.jobs[job].location();
            for (int other = 0; other < jobs; other++) {
                int there = problem.jobs[other].location();
                distance[other] = other == job ? -1 : problem.cost(here, there) + problem.cost(there, here);
            }
            sorted[job] = IntStream.range(0, jobs)
                    .boxed()
                    .sorted(Comparator.comparingDouble(other -> distance[other]))
                    .mapToInt(Integer::intValue)
                    .toArray();
        }
        return sorted;
    }

    /** Removes strings; {@link #removed()} tells what went. */
    void run() {
        removedCount = 0;
        seed = random.nextInt(state.problem.size());
        double meanLength = meanLength();
        double longest = Math.min(LONGEST_STRING, meanLength);
        double mostStrings = 4 * MEAN_REMOVED / (1 + longest) - 1;
        int strings = (int) (1 + random.nextDouble() * mostStrings);
        int cutRounds = 0;
        long[] hit = new long[(state.stops.length + 63) / 64];
        for (int job : neighbours[seed]) {
            int round = state.roundOf[job];
            if (round == State.NOWHERE || (hit[round >> 6] & (1L << (round & 63))) != 0) {
                continue;
            }
            hit[round >> 6] |= 1L << (round & 63);
            undo.touch(round);
            removeString(job, round, longest);
            if (++cutRounds >= strings) {
                break;
            }
        }
        undo.refreshTouched();
    }

    int[] removed() {
        return Arrays.copyOf(removed, removedCount);
    }

    /** The job that this run was centred on, and what lies near it. */
    int[] near() {
        return neighbours[seed];
    }

    /** What lies near a job, itself first. */
    int[] near(int job) {
        return neighbours[job];
    }

    private double meanLength() {
        int used = 0;
        int stops = 0;
        for (int size : state.size) {
            stops += size;
            used += size > 0 ? 1 : 0;
        }
        return used == 0 ? 1 : (double) stops / used;
    }

    private void removeString(int job, int round, double longest) {
        int size = state.size[round];
        int length = (int) (1 + random.nextDouble() * Math.min(size, longest));
        length = Math.min(length, size);
        int kept = length > 1 && length < size && random.nextDouble() < SPLIT ? keep(size - length) : 0;
        int span = length + kept;
        int at = placeOf(job, round);
        int first = Math.max(0, at - span + 1);
        int last = Math.min(at, size - span);
        int from = first + random.nextInt(last - first + 1);
        if (kept == 0) {
            take(round, from, from + span);
        } else {
            int gap = from + 1 + random.nextInt(length - 1);
            take(round, gap + kept, from + span);
            take(round, from, gap);
        }
    }

    /** How many stops inside a split string stay. */
    private int keep(int most) {
        int kept = 1;
        while (kept < most && random.nextDouble() < KEEP_MORE) {
            kept++;
        }
        return Math.min(kept, most);
    }

    private int placeOf(int job, int round) {
        int place = 0;
        while (state.stops[round][place] != job) {
            place++;
        }
        return place;
    }

    private void take(int round, int from, int to) {
        for (int place = to - 1; place >= from; place--) {
            int job = state.stops[round][place];
            if (!state.problem.frozen[job]) {
                removed[removedCount++] = job;
                state.cut(round, place, place + 1);
            }
        }
    }
}
