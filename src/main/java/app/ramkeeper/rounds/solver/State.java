package app.ramkeeper.rounds.solver;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A plan under work: rounds as arrays with segment data before and after each place, so that an insertion is checked in
 * constant time. A segment is (duration, earliest start, latest start) of a stretch of a round.
 */
final class State {

    static final int NOWHERE = -1;

    final Problem problem;
    final int[][] stops;
    final int[] size;
    final int[] roundOf;
    private final double[] load;
    private final double[] roundCost;
    /** From the earliest leaving to the return; 0 for an empty round. */
    private final double[] length;

    private final Shares shares;
    private final boolean timed;
    /** For place k of a round: the segment from its start up to the stop before k. */
    private final double[][] headD, headE, headL;
    /** For place k: the segment from stop k to the round's end. */
    private final double[][] tailD, tailE, tailL;

    private double missing;
    private int mustMissing;

    State(Problem problem) {
        this.problem = problem;
        int rounds = problem.rounds.length;
        stops = new int[rounds][8];
        size = new int[rounds];
        load = new double[rounds];
        roundCost = new double[rounds];
        length = new double[rounds];
        shares = new Shares(problem.evenness);
        timed = problem.evenness.price() > 0 || Arrays.stream(problem.rounds).anyMatch(round -> round.minuteCost() > 0);
        headD = new double[rounds][10];
        headE = new double[rounds][10];
        headL = new double[rounds][10];
        tailD = new double[rounds][10];
        tailE = new double[rounds][10];
        tailL = new double[rounds][10];
        roundOf = new int[problem.jobs.length];
        Arrays.fill(roundOf, NOWHERE);
        for (int job = 0; job < problem.jobs.length; job++) {
            countMissing(job, 1);
        }
        for (int round = 0; round < rounds; round++) {
            refresh(round);
        }
    }

    /** Cost with the prizes of what is left out; musts count in {@link #mustMissing()}. */
    double cost() {
        double sum = missing + shares.cost();
        for (double round : roundCost) {
            sum += round;
        }
        return sum;
    }

    int mustMissing() {
        return mustMissing;
    }

    boolean placed(int job) {
        return roundOf[job] != NOWHERE;
    }

    /** Puts a plan's stops in place. */
    void load(Plan plan) {
        for (int round = 0; round < plan.rounds().length; round++) {
            clear(round);
        }
        for (int round = 0; round < plan.rounds().length; round++) {
            set(round, plan.rounds()[round], plan.rounds()[round].length);
        }
    }

    /** Takes every stop out of a round; its segments are stale until the next {@link #set}. */
    void clear(int round) {
        cut(round, 0, size[round]);
    }

    /** Fills a cleared round. */
    void set(int round, int[] jobs, int count) {
        if (stops[round].length < count) {
            stops[round] = new int[count + 8];
        }
        System.arraycopy(jobs, 0, stops[round], 0, count);
        size[round] = count;
        for (int k = 0; k < count; k++) {
            countMissing(jobs[k], -1);
            roundOf[jobs[k]] = round;
        }
        refresh(round);
    }

    void insert(int job, int round, int place) {
        if (size[round] == stops[round].length) {
            stops[round] = Arrays.copyOf(stops[round], size[round] * 2);
        }
        System.arraycopy(stops[round], place, stops[round], place + 1, size[round] - place);
        stops[round][place] = job;
        size[round]++;
        roundOf[job] = round;
        countMissing(job, -1);
        refresh(round);
    }

    /** Takes the stops from one place to before another out of a round. */
    void cut(int round, int from, int to) {
        for (int k = from; k < to; k++) {
            roundOf[stops[round][k]] = NOWHERE;
            countMissing(stops[round][k], 1);
        }
        System.arraycopy(stops[round], to, stops[round], from, size[round] - to);
        size[round] -= to - from;
    }

    private void countMissing(int job, int sign) {
        if (problem.jobs[job].must()) {
            mustMissing += sign;
        } else {
            missing += sign * problem.jobs[job].prize();
        }
    }

    /** What inserting a job at a place of a round adds to the cost; infinity where it breaks a rule. */
    double insertionCost(int job, int round, int place) {
        Job visit = problem.jobs[job];
        Round day = problem.rounds[round];
        int[] list = stops[round];
        int count = size[round];
        int before = place == 0 ? day.start() : problem.jobs[list[place - 1]].location();
        int after = place == count ? day.end() : problem.jobs[list[place]].location();
        int here = visit.location();

        double reach = headD[round][place] + problem.time(before, here);
        double opens = visit.opens()[day.period()];
        double closes = visit.closes()[day.period()];
        double headEarliest = headE[round][place];
        if (headEarliest + reach > closes) {
            return Double.POSITIVE_INFINITY;
        }
        double headLatest = headL[round][place];
        double wait = Math.max(opens - reach - headLatest, 0);
        double duration = reach + visit.service() + wait;
        double earliest = Math.max(opens - reach, headEarliest) - wait;

        double onward = duration + problem.time(here, after);
        if (earliest + onward > tailL[round][place]) {
            return Double.POSITIVE_INFINITY;
        }
        if (day.longest() < Double.POSITIVE_INFINITY) {
            double latest = Math.min(closes - reach, headLatest);
            double lastWait = Math.max(tailE[round][place] - onward - latest, 0);
            if (onward + tailD[round][place] + lastWait > day.longest() + 1e-9) {
                return Double.POSITIVE_INFINITY;
            }
        }
        double added = problem.cost(before, here) + problem.cost(here, after) + problem.fit[job][round];
        if (timed) {
            double back = Math.max(tailE[round][place], earliest + onward) + tailD[round][place];
            double longer = back - day.from() - length[round];
            added += day.minuteCost() * longer + shares.costOf(round, longer);
        }
        return count == 0 ? added + day.fixedCost() : added - problem.cost(before, after);
    }

    /** The first place of a round that a job could stand at for all that follows: before it the job opens too late. */
    int firstPlace(int job, int round) {
        double ends = problem.jobs[job].opens()[problem.rounds[round].period()] + problem.jobs[job].service();
        double[] latest = tailL[round];
        int place = 0;
        while (place < size[round] && latest[place] < ends) {
            place++;
        }
        return place;
    }

    /** True if the stops before a place are done only after the job closes, which holds for all later places too. */
    boolean pastClosing(int job, int round, int place) {
        return headE[round][place] + headD[round][place] > problem.jobs[job].closes()[problem.rounds[round].period()];
    }

    /** True if the round has room for the job and is open to it. */
    boolean takes(int job, int round) {
        return problem.fit[job][round] < Double.POSITIVE_INFINITY
                && load[round] + problem.jobs[job].load() <= problem.rounds[round].capacity() + 1e-9;
    }

    /** Computes segments, load and cost of a round anew after its stops changed. */
    void refresh(int round) {
        int count = size[round];
        if (headD[round].length < count + 2) {
            grow(round, count + 10);
        }
        Round day = problem.rounds[round];
        forward(round, day, count);
        backward(round, day, count);
        roundCost[round] = price(round, day, count);
        if (timed) {
            measure(round, day, count);
        }
    }

    private void measure(int round, Round day, int count) {
        double now = 0;
        if (count > 0) {
            int last = problem.jobs[stops[round][count - 1]].location();
            now = headE[round][count] + headD[round][count] + problem.time(last, day.end()) - day.from();
        }
        shares.lengthen(round, now - length[round]);
        length[round] = now;
        roundCost[round] += day.minuteCost() * now;
    }

    private void grow(int round, int length) {
        headD[round] = new double[length];
        headE[round] = new double[length];
        headL[round] = new double[length];
        tailD[round] = new double[length];
        tailE[round] = new double[length];
        tailL[round] = new double[length];
    }

    private void forward(int round, Round day, int count) {
        double duration = 0;
        double earliest = day.from();
        double latest = day.until();
        int at = day.start();
        double carried = 0;
        headD[round][0] = duration;
        headE[round][0] = earliest;
        headL[round][0] = latest;
        for (int k = 0; k < count; k++) {
            Job visit = problem.jobs[stops[round][k]];
            double reach = duration + problem.time(at, visit.location());
            double opens = visit.opens()[day.period()];
            double closes = visit.closes()[day.period()];
            double wait = Math.max(opens - reach - latest, 0);
            duration = reach + visit.service() + wait;
            earliest = Math.max(opens - reach, earliest) - wait;
            latest = Math.min(closes - reach, latest);
            at = visit.location();
            carried += visit.load();
            headD[round][k + 1] = duration;
            headE[round][k + 1] = earliest;
            headL[round][k + 1] = latest;
        }
        load[round] = carried;
    }

    private void backward(int round, Round day, int count) {
        double duration = 0;
        double earliest = day.from();
        double latest = day.until();
        int at = day.end();
        tailD[round][count] = duration;
        tailE[round][count] = earliest;
        tailL[round][count] = latest;
        for (int k = count - 1; k >= 0; k--) {
            Job visit = problem.jobs[stops[round][k]];
            double reach = visit.service() + problem.time(visit.location(), at);
            double opens = visit.opens()[day.period()];
            double closes = visit.closes()[day.period()];
            double wait = Math.max(earliest - reach - closes, 0);
            duration = reach + duration + wait;
            double start = Math.max(earliest - reach, opens) - wait;
            latest = Math.min(latest - reach, closes);
            earliest = start;
            at = visit.location();
            tailD[round][k] = duration;
            tailE[round][k] = earliest;
            tailL[round][k] = latest;
        }
    }

    private double price(int round, Round day, int count) {
        if (count == 0) {
            return 0;
        }
        double sum = day.fixedCost();
        int at = day.start();
        for (int k = 0; k < count; k++) {
            int job = stops[round][k];
            int next = problem.jobs[job].location();
            sum += problem.cost(at, next) + problem.fit[job][round];
            at = next;
        }
        return sum + problem.cost(at, day.end());
    }

    Plan toPlan() {
        int[][] rounds = new int[stops.length][];
        for (int round = 0; round < stops.length; round++) {
            rounds[round] = Arrays.copyOf(stops[round], size[round]);
        }
        List<Integer> out = new ArrayList<>();
        for (int job = 0; job < roundOf.length; job++) {
            if (!placed(job)) {
                out.add(job);
            }
        }
        return new Plan(rounds, List.copyOf(out), mustMissing > 0 ? Double.POSITIVE_INFINITY : cost());
    }
}
