package app.ramkeeper.bench.rounds;

import app.ramkeeper.bench.rounds.PlainRound.Place;
import app.ramkeeper.rounds.run.WeekMapping;
import app.ramkeeper.rounds.solver.OpenProblem;
import app.ramkeeper.rounds.solver.Plan;
import app.ramkeeper.rounds.week.InventedWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * How a week is planned without an optimiser. Both keep every rule, put what is agreed in first, and put each visit at the
 * cheapest place of the round they choose.
 */
final class PlainPlanners {

    private final OpenProblem problem;
    private final WeekMapping mapping;
    private final List<LocalDate> days;
    private final int[][] rounds;
    private final List<Integer> byDueDate;

    private PlainPlanners(InventedWeek invented, WeekMapping mapping) {
        this.problem = new OpenProblem(mapping.problem());
        this.mapping = mapping;
        this.days = mapping.days();
        this.rounds = new int[problem.rounds()][0];
        this.byDueDate = new ArrayList<>(IntStream.range(0, problem.jobs())
                .boxed()
                .sorted(Comparator.<Integer, LocalDate>comparing(job -> invented.latest(mapping.stop(job)))
                        .thenComparing(job -> mapping.stop(job).id()))
                .toList());
    }

    /** By due date: each visit on the earliest day on which somebody has room, to whoever is nearest then. */
    static Plan nearestTechnician(InventedWeek invented, WeekMapping mapping) {
        PlainPlanners planner = new PlainPlanners(invented, mapping);
        planner.agreed();
        List<LocalDate> days = planner.days.stream().distinct().sorted().toList();
        for (int job : List.copyOf(planner.byDueDate)) {
            for (int day = 0; day < days.size() && !planner.toNearest(job, days.get(day)); ) {
                day++;
            }
        }
        return CheapestInsertion.plan(planner.problem, planner.rounds);
    }

    /** Day by day, one technician after another: what has been due longest, then whatever lies nearest until the day is full. */
    static Plan nearestCluster(InventedWeek invented, WeekMapping mapping) {
        PlainPlanners planner = new PlainPlanners(invented, mapping);
        planner.agreed();
        planner.days.stream()
                .distinct()
                .sorted()
                .forEach(day -> planner.roundsOf(day).forEach(planner::fill));
        return CheapestInsertion.plan(planner.problem, planner.rounds);
    }

    private void agreed() {
        for (int job : List.copyOf(byDueDate)) {
            LocalDate day = mapping.stop(job).fixedOn();
            if (day != null) {
                toNearest(job, day);
            }
        }
    }

    private IntStream roundsOf(LocalDate day) {
        return IntStream.range(0, rounds.length).filter(r -> days.get(r).equals(day));
    }

    private boolean toNearest(int job, LocalDate day) {
        Place best = roundsOf(day)
                .mapToObj(r -> PlainRound.cheapest(problem, r, rounds[r], job))
                .filter(place -> place.round() >= 0)
                .min(Comparator.comparingDouble(place -> away(job, place.round())))
                .orElse(Place.NONE);
        return put(job, best);
    }

    private void fill(int round) {
        boolean more = rounds[round].length > 0
                || List.copyOf(byDueDate).stream()
                        .anyMatch(job -> put(job, PlainRound.cheapest(problem, round, rounds[round], job)));
        while (more) {
            more = byDueDate.stream()
                    .sorted(Comparator.comparingDouble(job -> away(job, round)))
                    .anyMatch(job -> put(job, PlainRound.cheapest(problem, round, rounds[round], job)));
        }
    }

    private boolean put(int job, Place place) {
        if (place.round() < 0 || !byDueDate.remove((Integer) job)) {
            return false;
        }
        rounds[place.round()] = PlainRound.with(rounds[place.round()], job, place.place());
        return true;
    }

    /** Minutes of driving from the nearest place of the round: a visit of it, or where it starts while it is empty. */
    private double away(int job, int round) {
        int here = problem.job(job).location();
        double start =
                rounds[round].length == 0 ? problem.time(problem.round(round).start(), here) : Double.POSITIVE_INFINITY;
        return IntStream.of(rounds[round])
                .mapToDouble(stop -> problem.time(problem.job(stop).location(), here))
                .reduce(start, Math::min);
    }
}
