package app.ramkeeper.rounds.run;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.rounds.RoundsSettings;
import app.ramkeeper.rounds.week.Openings;
import app.ramkeeper.rounds.week.Week;
import app.ramkeeper.rounds.week.WeekEdits;
import app.ramkeeper.rounds.week.WeekEdits.By;
import app.ramkeeper.rounds.week.WeekPlan;
import app.ramkeeper.rounds.week.WeekStore;
import app.ramkeeper.rounds.week.WeekStore.Placing;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.Uuids;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Asks for runs of the optimiser, stops them, takes over what was kept. */
@Service
@ForOffice
@Transactional
public class WeekRuns {

    /** How a run treats the present plan. */
    public enum Kind {
        LIGHTLY,
        SCRATCH
    }

    static final int LIGHTER = 4;

    private final RunStore runs;
    private final RunJobs jobs;
    private final WeekStore weeks;
    private final WeekEdits edits;
    private final RoundsSettings settings;
    private final Clock clock;

    WeekRuns(RunStore runs, RunJobs jobs, WeekStore weeks, WeekEdits edits, RoundsSettings settings, Clock clock) {
        this.runs = runs;
        this.jobs = jobs;
        this.weeks = weeks;
        this.edits = edits;
        this.settings = settings;
        this.clock = clock;
    }

    /**
     * Asks for a run; one works on a week at a time. The same seed on the same plan gives the same answer.
     *
     * @throws Conflict if one is at work on this week
     */
    public void ask(LocalDate monday, Kind kind, long seed, CurrentUser by) {
        WeekPlan plan = plan(monday);
        if (runs.last(plan.id()).filter(WeekRun::isGoing).isPresent()) {
            throw new Conflict("The optimiser is at work on this week already. Stop it first, or wait for it.");
        }
        UUID id = Uuids.next();
        long iterations = kind == Kind.LIGHTLY ? Math.max(1, settings.iterations() / LIGHTER) : settings.iterations();
        runs.add(id, plan.id(), kind.name(), seed, iterations, plan.version(), by.person(), by.login());
        jobs.schedule(id);
    }

    /** Ends the run of a week; the best so far counts. */
    public void stop(LocalDate monday) {
        runs.wantStop(plan(monday).id());
    }

    /** The last run of a week's plan. */
    @Transactional(readOnly = true)
    public Optional<WeekRun> last(WeekPlan plan) {
        return runs.last(plan.id());
    }

    /** The last run of a week and the changes of its plan. */
    @Transactional(readOnly = true)
    public Beside beside(WeekPlan plan) {
        return runs.beside(plan.id());
    }

    /** Takes over the result that was kept because the plan had been changed meanwhile. */
    public void takeOver(By by, UUID run) {
        WeekPlan plan = plan(by.monday());
        WeekRun kept =
                runs.byId(run).filter(r -> r.planId().equals(plan.id())).orElseThrow(() -> new Missing("run", run));
        List<Placing> placings = runs.proposal(run)
                .orElseThrow(() -> new Conflict("There is no result of this run that could be taken over."));
        Week week = weeks.load(plan);
        List<Placing> known = placings.stream()
                .filter(p -> week.stop(p.stopId()).filter(s -> !s.over()).isPresent())
                .toList();
        edits.takeOver(
                by, known, reasons(week.with(known)), "Took over what the optimiser had worked out: " + kept.kind());
        runs.taken(run);
    }

    List<WeekEdits.LeftOut> reasons(Week week) {
        return Reasons.of(week, new Openings(week, LocalDate.now(clock).plusDays(1)));
    }

    private WeekPlan plan(LocalDate monday) {
        return weeks.plan(monday).orElseThrow(() -> new Missing("week", monday));
    }
}
