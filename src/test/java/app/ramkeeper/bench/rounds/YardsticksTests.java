package app.ramkeeper.bench.rounds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.rounds.run.WeekMapping;
import app.ramkeeper.rounds.solver.Limits;
import app.ramkeeper.rounds.solver.OpenProblem;
import app.ramkeeper.rounds.solver.Plan;
import app.ramkeeper.rounds.solver.PlanCheck;
import app.ramkeeper.rounds.solver.Progress;
import app.ramkeeper.rounds.solver.Search;
import app.ramkeeper.rounds.week.InventedWeek;
import app.ramkeeper.rounds.week.Stop;
import app.ramkeeper.rounds.week.Week;
import java.time.Duration;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;

/** The invented week and whoever plans it: every plan keeps the rules by two checks that share nothing. */
class YardsticksTests {

    private final InventedWeek invented = new InventedWeek(3, 120);
    private final WeekMapping mapping = new WeekMapping(invented.week(), invented.burden());

    @Test
    void ours() {
        Limits limits = Limits.ofIterations(1, 2000);
        sound(new Search(mapping.problem(), limits, Progress.none()).improve(mapping.start(), mapping.warmth()));
    }

    @Test
    void cheapestInsertion() {
        sound(CheapestInsertion.solve(mapping.problem()));
    }

    @Test
    void byDueDate() {
        sound(PlainPlanners.nearestTechnician(invented, mapping));
    }

    @Test
    void nearestCluster() {
        sound(PlainPlanners.nearestCluster(invented, mapping));
    }

    @Test
    void jsprit() {
        sound(Engine.JSPRIT
                .solve(mapping.problem(), 1, Duration.ofSeconds(2), false)
                .plan());
    }

    @Test
    void aDayCostsOnlyOnceItIsLate() {
        OpenProblem problem = new OpenProblem(mapping.problem());
        int late = 0;
        for (int job = 0; job < problem.jobs(); job++) {
            Stop stop = mapping.stop(job);
            for (int round = 1; round < problem.rounds(); round++) {
                double more = problem.price(job, round) - problem.price(job, round - 1);
                LocalDate day = mapping.days().get(round);
                if (sameCrew(round) && mapping.days().get(round - 1).isBefore(day) && Double.isFinite(more)) {
                    boolean past = stop.lateFrom() != null && stop.lateFrom().isBefore(day);
                    assertThat(more)
                            .as(stop.site() + " on " + day)
                            .isCloseTo(past ? stop.worthADay() : 0, within(1e-9));
                    late += past ? 1 : 0;
                }
            }
        }
        assertThat(late).isPositive();
    }

    private boolean sameCrew(int round) {
        return invented.week().rounds().get(round).crew()
                == invented.week().rounds().get(round - 1).crew();
    }

    private void sound(Plan plan) {
        assertThat(PlanCheck.of(mapping.problem(), plan).breaches()).isEmpty();
        Week placed = mapping.placed(plan);
        assertThat(placed.breaches().stream().filter(b -> b.stop().placed())).isEmpty();
        assertThat(placed.totals().in()).isGreaterThan(40);
    }
}
