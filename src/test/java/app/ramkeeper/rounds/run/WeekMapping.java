package app.ramkeeper.rounds.run;

import app.ramkeeper.rounds.solver.Plan;
import app.ramkeeper.rounds.solver.Problem;
import app.ramkeeper.rounds.week.Stop;
import app.ramkeeper.rounds.week.Week;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** Opens the application's own mapping of a week to the benchmarks: with half an hour a day for call-outs. */
public final class WeekMapping {

    private final Week week;
    private final WeekProblem mapped;

    public WeekMapping(Week week, Map<UUID, Double> burden) {
        this(week, week.plan().monday().minusDays(3), false, burden);
    }

    WeekMapping(Week week, LocalDate today, boolean lightly, Map<UUID, Double> burden) {
        this.week = week;
        this.mapped = new WeekProblem(week, today, lightly, Duration.ofMinutes(30), burden);
    }

    public Problem problem() {
        return mapped.problem();
    }

    public Plan start() {
        return mapped.start();
    }

    public double warmth() {
        return mapped.warmth();
    }

    public Stop stop(int job) {
        return mapped.stop(job);
    }

    /** The week with its visits where the plan has them. */
    public Week placed(Plan plan) {
        return week.with(mapped.placings(plan));
    }

    /** The technician's days in the order of the problem's rounds. */
    public List<LocalDate> days() {
        return week.rounds().stream().map(round -> round.day()).toList();
    }
}
