package app.ramkeeper.bench.rounds;

import app.ramkeeper.bench.rounds.PlainRound.Place;
import app.ramkeeper.rounds.solver.OpenProblem;
import app.ramkeeper.rounds.solver.Plan;
import app.ramkeeper.rounds.solver.Problem;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The plain yardstick: cheapest insertion, then 2-opt within each round. What must go in goes first, by what it adds; then
 * what may, by what it is worth above that.
 */
final class CheapestInsertion {

    private final OpenProblem problem;
    private final int[][] rounds;
    private final Place[][] places;

    private CheapestInsertion(OpenProblem problem) {
        this.problem = problem;
        this.rounds = new int[problem.rounds()][0];
        this.places = new Place[problem.jobs()][problem.rounds()];
    }

    static Plan solve(Problem problem) {
        CheapestInsertion insertion = new CheapestInsertion(new OpenProblem(problem));
        insertion.insert();
        for (int round = 0; round < insertion.rounds.length; round++) {
            insertion.twoOpt(round);
        }
        return plan(insertion.problem, insertion.rounds);
    }

    private void insert() {
        boolean[] in = new boolean[problem.jobs()];
        IntStream.range(0, rounds.length).forEach(round -> look(round, in));
        for (int job = dearest(in); job >= 0; job = dearest(in)) {
            Place place = best(job);
            rounds[place.round()] = PlainRound.with(rounds[place.round()], job, place.place());
            in[job] = true;
            look(place.round(), in);
        }
    }

    private void look(int round, boolean[] in) {
        for (int job = 0; job < in.length; job++) {
            if (!in[job]) {
                places[job][round] = PlainRound.cheapest(problem, round, rounds[round], job);
            }
        }
    }

    private Place best(int job) {
        Place best = Place.NONE;
        for (Place place : places[job]) {
            best = place.added() < best.added() ? place : best;
        }
        return best;
    }

    /** The next to go in; -1 if nothing fits or is worth it any more. */
    private int dearest(boolean[] in) {
        int dearest = -1;
        double most = 0;
        boolean must = false;
        for (int job = 0; job < in.length; job++) {
            double added = in[job] ? Double.POSITIVE_INFINITY : best(job).added();
            if (added < Double.POSITIVE_INFINITY) {
                boolean musts = problem.job(job).must();
                double gain = musts ? -added : problem.job(job).prize() - added;
                if ((musts && (!must || gain > most)) || (!musts && !must && gain > most)) {
                    dearest = job;
                    most = gain;
                    must = musts;
                }
            }
        }
        return dearest;
    }

    private void twoOpt(int round) {
        boolean better = true;
        while (better) {
            better = false;
            for (int from = 0; from < rounds[round].length - 1; from++) {
                for (int to = from + 1; to < rounds[round].length; to++) {
                    int[] turned = turned(rounds[round], from, to);
                    if (PlainRound.cost(problem, round, turned) < PlainRound.cost(problem, round, rounds[round]) - 1e-9
                            && PlainRound.keepsTheRules(problem, round, turned)) {
                        rounds[round] = turned;
                        better = true;
                    }
                }
            }
        }
    }

    private static int[] turned(int[] stops, int from, int to) {
        int[] turned = stops.clone();
        for (int k = from; k <= to; k++) {
            turned[k] = stops[to - (k - from)];
        }
        return turned;
    }

    /** Rounds as a plan with its cost. */
    static Plan plan(OpenProblem problem, int[][] rounds) {
        boolean[] in = new boolean[problem.jobs()];
        double cost = 0;
        for (int round = 0; round < rounds.length; round++) {
            Arrays.stream(rounds[round]).forEach(job -> in[job] = true);
            cost += PlainRound.cost(problem, round, rounds[round]);
        }
        var out = IntStream.range(0, in.length).filter(job -> !in[job]).boxed().toList();
        return new Plan(
                rounds,
                out,
                cost + out.stream().mapToDouble(job -> problem.job(job).prize()).sum());
    }
}
