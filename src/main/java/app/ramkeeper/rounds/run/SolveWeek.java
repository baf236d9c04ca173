package app.ramkeeper.rounds.run;

import app.ramkeeper.audit.Actor;
import app.ramkeeper.rounds.RoundsSettings;
import app.ramkeeper.rounds.solver.Limits;
import app.ramkeeper.rounds.solver.Plan;
import app.ramkeeper.rounds.solver.PlanCheck;
import app.ramkeeper.rounds.solver.Progress;
import app.ramkeeper.rounds.solver.Search;
import app.ramkeeper.rounds.travel.Travels;
import app.ramkeeper.rounds.week.DayTimes.Breach;
import app.ramkeeper.rounds.week.Effects;
import app.ramkeeper.rounds.week.Moved;
import app.ramkeeper.rounds.week.Openings;
import app.ramkeeper.rounds.week.Times;
import app.ramkeeper.rounds.week.Week;
import app.ramkeeper.rounds.week.WeekEdits;
import app.ramkeeper.rounds.week.WeekEdits.By;
import app.ramkeeper.rounds.week.WeekPlan;
import app.ramkeeper.rounds.week.WeekStore;
import app.ramkeeper.rounds.week.WeekStore.Placing;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessResourceFailureException;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.authority.AuthorityUtils;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.core.context.SecurityContextImpl;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Runs the optimiser on a week and stores what it finds, checked anew by plain code.
 *
 * <p>Until the end nothing but the progress is written, so a run that was killed half-way begins again on another node and,
 * its seed and steps being the same, comes to the same plan.
 */
@Component
class SolveWeek {

    private static final Logger LOG = LoggerFactory.getLogger(SolveWeek.class);
    private static final long TELL_NANOS = 700_000_000L;

    private final RunStore runs;
    private final WeekStore weeks;
    private final WeekEdits edits;
    private final Travels travels;
    private final RoundsSettings settings;
    private final TransactionTemplate transaction;
    private final Clock clock;

    SolveWeek(
            RunStore runs,
            WeekStore weeks,
            WeekEdits edits,
            Travels travels,
            RoundsSettings settings,
            PlatformTransactionManager transactions,
            Clock clock) {
        this.runs = runs;
        this.weeks = weeks;
        this.edits = edits;
        this.travels = travels;
        this.settings = settings;
        this.transaction = new TransactionTemplate(transactions);
        this.clock = clock;
    }

    void run(UUID id) {
        WeekRun run = runs.byId(id).orElse(null);
        if (run == null || !run.isGoing()) {
            return;
        }
        runs.started(id);
        try {
            asStarter(run, () -> solve(run));
        } catch (DataAccessResourceFailureException away) {
            throw away;
        } catch (RuntimeException failure) {
            LOG.error("Run {} of the optimiser failed", id, failure);
            runs.end(
                    id,
                    "FAILED",
                    "The run ended because of a fault; the plan is as it was. The details are in the server's log.");
        }
    }

    private void solve(WeekRun run) {
        WeekPlan plan = weeks.plan(run.planId()).orElseThrow();
        Week seen = weeks.load(plan);
        travels.ask(WeekStore.places(seen.stops(), seen.rounds()));
        Week week = weeks.load(plan);
        WeekProblem problem = new WeekProblem(
                week, LocalDate.now(clock), run.lightly(), settings.callOutRoom(), runs.burden(plan.monday()));
        if (problem.isEmpty()) {
            runs.end(run.id(), "FAILED", nothing(week));
            return;
        }
        Plan best = search(run, problem, pressingElsewhere(week, problem));
        PlanCheck.Verdict verdict = PlanCheck.of(problem.problem(), best);
        if (!verdict.sound()) {
            throw new IllegalStateException("The optimiser broke its own rules: " + verdict.breaches());
        }
        store(run, week, sound(week, problem, problem.placings(best)));
    }

    private String nothing(Week week) {
        boolean nobody = week.rounds().stream()
                .noneMatch(r -> r.works() && !r.locked() && r.day().isAfter(LocalDate.now(clock)));
        return nobody
                ? "Nobody works on a day that is still to come and not locked, or no start has a position. Look at the working hours,"
                        + " leave and depots. The plan is as it was."
                : "There is no visit that could be placed. The plan is as it was.";
    }

    /** Pressing visits in no round that the optimiser does not even look at: without a position, or taken out by the office. */
    private static int pressingElsewhere(Week week, WeekProblem problem) {
        Set<UUID> movable = problem.movable();
        return (int) week.leftOut().stream()
                .filter(stop -> stop.must() && !movable.contains(stop.id()))
                .count();
    }

    private Plan search(WeekRun run, WeekProblem problem, int elsewhere) {
        long[] told = {0};
        boolean[] stop = {runs.byId(run.id()).map(WeekRun::stopWanted).orElse(true)};
        Progress progress = (plan, share, steps) -> {
            long now = System.nanoTime();
            if (now - told[0] > TELL_NANOS) {
                told[0] = now;
                stop[0] |= tell(run, problem, plan, share, elsewhere);
            }
        };
        Limits limits = new Limits(run.seed(), run.iterations(), settings.longest(), () -> stop[0]);
        return new Search(problem.problem(), limits, progress).improve(problem.start(), problem.warmth());
    }

    private boolean tell(WeekRun run, WeekProblem problem, Plan plan, double share, int elsewhere) {
        int in = 0;
        for (int[] round : plan.rounds()) {
            in += round.length;
        }
        int pressing = elsewhere
                + (int) plan.leftOut().stream()
                        .filter(j -> problem.stop(j).must())
                        .count();
        double prizes = plan.leftOut().stream()
                .mapToDouble(j -> problem.stop(j).worth())
                .sum();
        return runs.progress(run.id(), share, in, (int) Math.max(0, plan.cost() - prizes), pressing, plan.cost());
    }

    /** What the plain check objects to is taken out again, so that no plan of the optimiser ever breaks a rule. */
    private static List<Placing> sound(Week week, WeekProblem problem, List<Placing> placings) {
        Set<UUID> movable = problem.movable();
        List<Placing> kept = placings;
        for (int round = 0; round < 50; round++) {
            Set<UUID> objected = week.with(kept).breaches().stream()
                    .map(Breach::stop)
                    .filter(s -> s.placed() && !s.locked() && movable.contains(s.id()))
                    .map(s -> s.id())
                    .collect(Collectors.toSet());
            if (objected.isEmpty()) {
                return kept;
            }
            LOG.warn("The check takes {} visits out of the optimiser's plan", objected.size());
            kept = kept.stream().filter(p -> !objected.contains(p.stopId())).toList();
        }
        throw new IllegalStateException("The optimiser's plan stays in breach of the rules");
    }

    private void store(WeekRun run, Week before, List<Placing> placings) {
        Week after = before.with(placings);
        List<WeekEdits.LeftOut> reasons =
                Reasons.of(after, new Openings(after, LocalDate.now(clock).plusDays(1)));
        String what = words(run, before.totals(), after.totals());
        try {
            transaction.executeWithoutResult(status -> {
                if (runs.end(run.id(), "DONE", what)) {
                    edits.takeOver(
                            new By(before.plan().monday(), before.plan().version(), run.askedBy()),
                            placings,
                            reasons,
                            what);
                }
            });
        } catch (Moved moved) {
            transaction.executeWithoutResult(status -> {
                runs.keepProposal(run.id(), placings);
                runs.end(
                        run.id(),
                        "KEPT",
                        what
                                + " It was not taken over, because the plan was changed while the optimiser worked. Take it over or leave it.");
            });
        }
    }

    private static String words(WeekRun run, Week.Totals before, Week.Totals after) {
        return (run.lightly() ? "Replanned lightly" : "Planned from scratch") + ": " + after.in()
                + " visits in (before: "
                + before.in() + "), " + Times.span(after.driveMinutes()) + " of driving ("
                + Effects.signed(after.driveMinutes() - before.driveMinutes()) + "), "
                + (after.pressingOut() == 0 ? "no" : after.pressingOut())
                + (after.pressingOut() == 1 ? " pressing visit left out." : " pressing visits left out.");
    }

    /** The job acts for the person who asked, with the office's rights. */
    private static void asStarter(WeekRun run, Runnable work) {
        SecurityContext before = SecurityContextHolder.getContext();
        SecurityContextHolder.setContext(new SecurityContextImpl(UsernamePasswordAuthenticationToken.authenticated(
                run.actor(), null, AuthorityUtils.createAuthorityList("ROLE_OFFICE"))));
        try {
            Actor.as(new Actor(run.actor(), "optimiser"), () -> {
                work.run();
                return true;
            });
        } finally {
            SecurityContextHolder.setContext(before);
        }
    }
}
