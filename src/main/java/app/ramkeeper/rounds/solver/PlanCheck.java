package app.ramkeeper.rounds.solver;

import java.util.ArrayList;
import java.util.List;

/**
 * Checks a plan the plain way, stop by stop, sharing nothing with the optimiser's own arithmetic.
 *
 * <p>Used before a plan is published and on every result in tests and benchmarks.
 */
public final class PlanCheck {

    private static final double SLACK = 1e-6;

    private final Problem problem;
    private final List<String> breaches = new ArrayList<>();
    private double cost;

    private PlanCheck(Problem problem) {
        this.problem = problem;
    }

    /**
     * What the check found.
     *
     * @param breaches each broken rule in a sentence; empty for a sound plan
     * @param cost the plan's cost, added up anew
     */
    public record Verdict(List<String> breaches, double cost) {
        public boolean sound() {
            return breaches.isEmpty();
        }
    }

    /** Checks the plan against every rule of the problem. */
    public static Verdict of(Problem problem, Plan plan) {
        PlanCheck check = new PlanCheck(problem);
        check.everyJobOnce(plan);
        for (int round = 0; round < plan.rounds().length; round++) {
            check.round(round, plan.rounds()[round]);
        }
        check.evenness(plan);
        return new Verdict(List.copyOf(check.breaches), check.cost);
    }

    private void evenness(Plan plan) {
        Evenness wanted = problem.evenness;
        double[] share = wanted.busy().clone();
        for (int round = 0; round < plan.rounds().length; round++) {
            if (plan.rounds()[round].length > 0) {
                Round day = problem.rounds[round];
                double minutes = arriveBack(day, plan.rounds()[round], day.from()) - day.from();
                share[wanted.groupOf()[round]] += minutes;
                cost += day.minuteCost() * minutes;
            }
        }
        double mean = 0;
        for (int group = 0; group < share.length; group++) {
            share[group] /= wanted.available()[group];
            mean += share[group] / share.length;
        }
        for (double of : share) {
            cost += wanted.price() * (of - mean) * (of - mean);
        }
    }

    private void everyJobOnce(Plan plan) {
        int[] seen = new int[problem.size()];
        for (int[] round : plan.rounds()) {
            for (int job : round) {
                seen[job]++;
            }
        }
        for (int job : plan.leftOut()) {
            seen[job]++;
            cost += problem.jobs[job].must() ? 0 : problem.jobs[job].prize();
            if (problem.jobs[job].must()) {
                breaches.add("Job " + job + " must be in and is left out");
            }
        }
        for (int job = 0; job < seen.length; job++) {
            if (seen[job] != 1) {
                breaches.add("Job " + job + " stands " + seen[job] + " times in the plan");
            }
        }
    }

    private void round(int number, int[] stops) {
        if (stops.length == 0) {
            return;
        }
        Round round = problem.rounds[number];
        cost += round.fixedCost();
        double load = 0;
        int at = round.start();
        for (int job : stops) {
            Job visit = problem.jobs[job];
            if (problem.fit[job][number] == Double.POSITIVE_INFINITY) {
                breaches.add("Job " + job + " does not fit round " + number);
            }
            load += visit.load();
            cost += problem.cost(at, visit.location()) + problem.fit[job][number];
            at = visit.location();
        }
        cost += problem.cost(at, round.end());
        if (load > round.capacity() + SLACK) {
            breaches.add("Round " + number + " carries " + load + " of " + round.capacity());
        }
        double leave = latestLeaving(round, stops);
        drive(number, round, stops, Math.max(round.from(), Math.min(leave, round.until())));
    }

    /** The latest leaving that still reaches the first waiting stop in time: the shortest day. */
    private double latestLeaving(Round round, int[] stops) {
        double latest = round.until();
        int next = round.end();
        for (int k = stops.length - 1; k >= 0; k--) {
            Job visit = problem.jobs[stops[k]];
            latest = Math.min(
                    visit.closes()[round.period()], latest - problem.time(visit.location(), next) - visit.service());
            next = visit.location();
        }
        double earliestEnd = arriveBack(round, stops, round.from());
        double leave = latest - problem.time(round.start(), next);
        double low = round.from();
        double high = Math.max(low, leave);
        for (int i = 0; i < 100; i++) {
            double middle = (low + high) / 2;
            if (arriveBack(round, stops, middle) <= earliestEnd + 1e-9) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private double arriveBack(Round round, int[] stops, double leave) {
        double now = leave;
        int at = round.start();
        for (int job : stops) {
            Job visit = problem.jobs[job];
            now = Math.max(now + problem.time(at, visit.location()), visit.opens()[round.period()]) + visit.service();
            at = visit.location();
        }
        return now + problem.time(at, round.end());
    }

    private void drive(int number, Round round, int[] stops, double leave) {
        double now = leave;
        int at = round.start();
        for (int job : stops) {
            Job visit = problem.jobs[job];
            now = Math.max(now + problem.time(at, visit.location()), visit.opens()[round.period()]);
            if (now > visit.closes()[round.period()] + SLACK) {
                breaches.add("Round %d reaches job %d at %.3f, after it closes at %.3f"
                        .formatted(number, job, now, visit.closes()[round.period()]));
            }
            now += visit.service();
            at = visit.location();
        }
        now += problem.time(at, round.end());
        if (now > round.until() + SLACK) {
            breaches.add("Round %d is back at %.3f, after %.3f".formatted(number, now, round.until()));
        }
        if (now - leave > round.longest() + SLACK) {
            breaches.add("Round %d lasts %.3f of at most %.3f".formatted(number, now - leave, round.longest()));
        }
    }
}
