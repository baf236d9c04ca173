package app.ramkeeper.rounds.run;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.rounds.solver.Limits;
import app.ramkeeper.rounds.solver.Plan;
import app.ramkeeper.rounds.solver.PlanCheck;
import app.ramkeeper.rounds.solver.Progress;
import app.ramkeeper.rounds.solver.Search;
import app.ramkeeper.rounds.week.InventedWeek;
import app.ramkeeper.rounds.week.Stop;
import app.ramkeeper.rounds.week.Week;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A published week after a call-out and a technician's illness: replanned lightly it stays much as people know it. Measured with the three
 * seeds: of about 165 visits of the others lightly moves 0 or 1 and leaves out 3 to 5 that are not pressing; from scratch 66 to 97 move.
 * Of the 11 to 20 visits of the ill technician others take over 9 to 13.
 */
class ReplanTests {

    private static final long STEPS = 4_000;
    private static final int VISITS = 260;
    private static final LocalDate MONDAY = InventedWeek.MONDAY;

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void lightlyMovesFewOfTheOthers(long seed) {
        InventedWeek invented = new InventedWeek(seed, VISITS);
        Week told = planned(invented, invented.week(), MONDAY.minusDays(3), false, seed);
        UUID ill = told.rounds().get(10).personId();
        Week now = invented.ill(invented.withCallOut(told), ill, MONDAY.plusDays(1));
        List<Stop> theirs = told.stops().stream()
                .filter(s ->
                        ill.equals(s.personId()) && s.day() != null && s.day().isAfter(MONDAY))
                .toList();
        assertThat(theirs).hasSizeGreaterThan(10);

        Week light = planned(invented, now, MONDAY, true, seed);
        Week fresh = planned(invented, now, MONDAY, false, seed);

        assertThat(changed(told, fresh, theirs))
                .as("from scratch much of the week is turned over")
                .isGreaterThan(50);
        assertThat(changed(told, light, theirs)).isLessThan(15);
        assertThat(moved(told, light, theirs)).isLessThan(6);
        assertThat(told.stops())
                .filteredOn(s -> s.must() && s.placed() && !theirs.contains(s))
                .as("nothing pressing is given up")
                .allMatch(s -> light.stop(s.id()).orElseThrow().placed());
        assertThat(theirs.stream()
                        .filter(s -> light.stop(s.id()).orElseThrow().placed())
                        .count())
                .as("others go where the ill one would have gone")
                .isGreaterThan(theirs.size() / 2L);
        assertThat(light.stops())
                .filteredOn(s -> s.kind().equals("CALL_OUT"))
                .singleElement()
                .satisfies(s -> assertThat(s.day()).isEqualTo(MONDAY.plusDays(1)));
        assertThat(light.breaches().stream().filter(breach -> breach.stop().placed()))
                .isEmpty();
    }

    private static Week planned(InventedWeek invented, Week week, LocalDate today, boolean lightly, long seed) {
        WeekMapping mapping = new WeekMapping(week, today, lightly, invented.burden());
        long steps = lightly ? STEPS / WeekRuns.LIGHTER : STEPS;
        Plan plan = new Search(mapping.problem(), Limits.ofIterations(seed, steps), Progress.none())
                .improve(mapping.start(), mapping.warmth());
        assertThat(PlanCheck.of(mapping.problem(), plan).breaches()).isEmpty();
        return mapping.placed(plan);
    }

    /** Visits of the others that go to another technician or day, or are left out now. */
    private static long changed(Week before, Week after, List<Stop> but) {
        return before.stops().stream()
                .filter(s -> s.placed() && !but.contains(s))
                .filter(s -> !WeekProblem.keyOf(s).equals(WeekProblem.keyOf(at(after, s))))
                .count();
    }

    private static long moved(Week before, Week after, List<Stop> but) {
        return changed(before, after, but)
                - before.stops().stream()
                        .filter(s ->
                                s.placed() && !but.contains(s) && !at(after, s).placed())
                        .count();
    }

    private static Stop at(Week week, Stop stop) {
        return week.stop(stop.id()).orElseThrow();
    }
}
