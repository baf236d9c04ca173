package app.ramkeeper.bench.rounds;

import app.ramkeeper.rounds.solver.Job;
import app.ramkeeper.rounds.solver.OpenProblem;
import app.ramkeeper.rounds.solver.Round;

/** What the yardsticks ask of a round, stop by stop: whether it keeps the rules, and what it costs. */
final class PlainRound {

    private static final double SLACK = 1e-9;

    private PlainRound() {}

    /**
     * True if the stops fit, hours, load and length. The shortest day comes from leaving later by what is waited, as far as no
     * window closes meanwhile: M. W. P. Savelsbergh, "The vehicle routing problem with time windows: minimizing route
     * duration", ORSA Journal on Computing 4(2), 1992, 146-154.
     */
    static boolean keepsTheRules(OpenProblem problem, int number, int[] stops) {
        Round round = problem.round(number);
        double now = round.from();
        double load = 0;
        double waited = 0;
        double slack = Double.POSITIVE_INFINITY;
        int at = round.start();
        for (int stop : stops) {
            Job visit = problem.job(stop);
            if (problem.price(stop, number) == Double.POSITIVE_INFINITY) {
                return false;
            }
            load += visit.load();
            double arrives = now + problem.time(at, visit.location());
            double starts = Math.max(arrives, visit.opens()[round.period()]);
            double closes = visit.closes()[round.period()];
            if (starts > closes + SLACK) {
                return false;
            }
            waited += starts - arrives;
            slack = Math.min(slack, waited + closes - starts);
            now = starts + visit.service();
            at = visit.location();
        }
        double back = now + problem.time(at, round.end());
        slack = Math.min(slack, waited + round.until() - back);
        return back <= round.until() + SLACK
                && load <= round.capacity() + SLACK
                && back - round.from() - Math.min(waited, slack) <= round.longest() + SLACK;
    }

    /** Travel, fit and fixed cost of a round. */
    static double cost(OpenProblem problem, int number, int[] stops) {
        if (stops.length == 0) {
            return 0;
        }
        Round round = problem.round(number);
        double sum = round.fixedCost();
        int at = round.start();
        for (int stop : stops) {
            int next = problem.job(stop).location();
            sum += problem.cost(at, next) + problem.price(stop, number);
            at = next;
        }
        return sum + problem.cost(at, round.end());
    }

    /** The stops with one more at a place. */
    static int[] with(int[] stops, int job, int place) {
        int[] longer = new int[stops.length + 1];
        System.arraycopy(stops, 0, longer, 0, place);
        longer[place] = job;
        System.arraycopy(stops, place, longer, place + 1, stops.length - place);
        return longer;
    }

    /** A place for a job in a round and what it adds. */
    record Place(int round, int place, double added) {
        static final Place NONE = new Place(-1, -1, Double.POSITIVE_INFINITY);
    }

    /** The cheapest place in a round that keeps the rules. */
    static Place cheapest(OpenProblem problem, int number, int[] stops, int job) {
        if (problem.price(job, number) == Double.POSITIVE_INFINITY) {
            return Place.NONE;
        }
        Round round = problem.round(number);
        int here = problem.job(job).location();
        Place best = Place.NONE;
        for (int place = 0; place <= stops.length; place++) {
            int before =
                    place == 0 ? round.start() : problem.job(stops[place - 1]).location();
            int after = place == stops.length
                    ? round.end()
                    : problem.job(stops[place]).location();
            double added = problem.cost(before, here) + problem.cost(here, after) + problem.price(job, number);
            added += stops.length == 0 ? round.fixedCost() : -problem.cost(before, after);
            if (added < best.added && keepsTheRules(problem, number, with(stops, job, place))) {
                best = new Place(number, place, added);
            }
        }
        return best;
    }
}
