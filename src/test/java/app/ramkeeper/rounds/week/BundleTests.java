package app.ramkeeper.rounds.week;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.rounds.week.Bundle.Appointment;
import app.ramkeeper.rounds.week.Bundle.SiteTerms;
import app.ramkeeper.rounds.week.Candidates.Terms;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BundleTests {

    private static final LocalDate MONDAY = LocalDate.of(2026, 11, 30);
    private static final UUID SITE = UUID.randomUUID();
    private static final UUID KIND = UUID.randomUUID();
    private static final Terms PLAIN = new Terms(Map.of(), Map.of(), Map.of());

    @Test
    void aVisitThatWasToldGrowsOnlyByWhatIsPressing() {
        Bundle agreed = new Bundle(SITE, visit("CONFIRMED"), MONDAY);
        assertThat(agreed.ridesAlong(task(20, 1), PLAIN)).as("in its window").isFalse();
        assertThat(agreed.ridesAlong(task(-3, 1), PLAIN)).as("overdue").isTrue();

        Bundle open = new Bundle(SITE, visit("NONE"), MONDAY);
        assertThat(open.ridesAlong(task(20, 1), PLAIN)).isTrue();
    }

    @Test
    void whatAsksForTwoOrForTrainingDoesNotRideOnAVisitOfOne() {
        Terms lifting = new Terms(Map.of(), Map.of(KIND, Set.of("LIFTING")), Map.of());
        Bundle open = new Bundle(SITE, visit("NONE"), MONDAY);

        assertThat(open.ridesAlong(task(-3, 2), PLAIN)).isFalse();
        assertThat(open.ridesAlong(task(-3, 1), lifting)).isFalse();
        assertThat(new Bundle(SITE, null, MONDAY).ridesAlong(task(-3, 2), lifting))
                .isTrue();
    }

    @Test
    void countsLessWhatCanWaitAndMoreWhatWasBroughtForward() {
        DueRow task = task(20, 1);
        Bundle plain = new Bundle(SITE, null, MONDAY);
        plain.tasks.add(task);
        Bundle later = new Bundle(SITE, null, MONDAY);
        later.tasks.add(task);
        later.lookAhead(Map.of(task.taskId(), move(task, MONDAY, MONDAY.plusWeeks(2))));
        Bundle sooner = new Bundle(SITE, null, MONDAY);
        sooner.tasks.add(task);
        sooner.lookAhead(Map.of(task.taskId(), move(task, MONDAY.plusWeeks(2), MONDAY)));

        assertThat(later.worth()).isLessThan(plain.worth());
        assertThat(sooner.worth()).isGreaterThan(plain.worth());
        assertThat(later.why()).contains("can wait until the week of Mon 14 Dec: because");
        assertThat(sooner.why()).contains("brought forward from the week of Mon 14 Dec: because");
    }

    @ParameterizedTest
    @ValueSource(ints = {-60, -1, 0, 1, 3, 6})
    void aPressingTaskIsBetterDoneOnTheLastDayThanLeftOut(int until) {
        Bundle bundle = new Bundle(SITE, null, MONDAY);
        bundle.tasks.add(task(until, 1));

        assertThat(bundle.lateFrom()).isEqualTo(MONDAY.plusDays(until));
        int late = 6 - Math.max(0, until);
        assertThat(bundle.worthADay() * late).isLessThan(bundle.worth());
        assertThat(bundle.worthADay()).isPositive();
    }

    @Test
    void whatHasTimeUntilAfterTheWeekIsNotLateInIt() {
        Bundle bundle = new Bundle(SITE, null, MONDAY);
        bundle.tasks.add(task(7, 1));

        assertThat(bundle.lateFrom()).isNull();
        assertThat(bundle.worthADay()).isZero();
    }

    @Test
    void saysTheYearOfWhatIsLongOverdueAndWhatTheCallerSaid() {
        Bundle bundle = new Bundle(
                SITE,
                new Appointment(
                        UUID.randomUUID(),
                        SITE,
                        "CALL_OUT",
                        null,
                        null,
                        60,
                        "NONE",
                        "PLANNED",
                        null,
                        null,
                        0,
                        "somebody rang, stock without water",
                        false),
                MONDAY);
        bundle.tasks.add(task(-400, 1));
        bundle.tasks.add(task(-30, 1));

        assertThat(bundle.why())
                .startsWith("somebody rang, stock without water, planned without a day")
                .contains("overdue since Sun 26 Oct 2025", "overdue since Sat 31 Oct")
                .doesNotContain("2026");
    }

    @Test
    void nothingIsOverdueBeforeItsWindowHasEnded() {
        DueRow task = task(-2, 1);
        Bundle before = new Bundle(SITE, null, MONDAY, MONDAY.minusDays(3));
        before.tasks.add(task);
        assertThat(before.why()).isEqualTo("Clean strainer must be done by Sat 28 Nov, before this week");
        Bundle after = new Bundle(SITE, null, MONDAY, MONDAY.minusDays(1));
        after.tasks.add(task);
        assertThat(after.why()).isEqualTo("Clean strainer due Wed 18 Nov, overdue since Sat 28 Nov");
    }

    @Test
    void aVisitKeepsTheMinutesThatWereTypedAndKnowsWhatItsTasksNeed() {
        SiteTerms walk = new SiteTerms(SITE, 10, false, false, false);
        Appointment typed = visit("CONFIRMED");
        Bundle bundle = new Bundle(SITE, typed, MONDAY);
        for (int i = 0; i < 3; i++) {
            bundle.tasks.add(task(-3, 1, typed.id()));
        }
        bundle.tasks.add(task(-3, 1));

        Bundle.Minutes minutes = bundle.minutes(walk, Map.of());

        assertThat(minutes.given()).as("60 typed, 45 ride along").isEqualTo(105);
        assertThat(minutes.asked()).as("4 x 45 and the walk in and out").isEqualTo(200);
        assertThat(minutes.riding()).isEqualTo(45);
        assertThat(bundle.planned(minutes, false)).as("typed").isEqualTo(105);
        assertThat(bundle.planned(minutes, true)).as("taken over").isEqualTo(200);
        assertThat(new Bundle(SITE, visit("CONFIRMED", false), MONDAY).planned(minutes, false))
                .as("typed by nobody")
                .isEqualTo(200);
    }

    @Test
    void aVisitThatIsLongEnoughIsNotMadeShorterByItsTasks() {
        Appointment visit = visit("NONE", false);
        Bundle bundle = new Bundle(SITE, visit, MONDAY);
        bundle.tasks.add(task(-3, 1, visit.id()));

        assertThat(bundle.minutes(new SiteTerms(SITE, 0, false, false, false), Map.of()))
                .isEqualTo(new Bundle.Minutes(60, 60, 0));
    }

    private static Horizon.Move move(DueRow task, LocalDate from, LocalDate to) {
        return new Horizon.Move(task.taskId(), SITE, "Beck", "Clean strainer", from, to, "because");
    }

    private static Appointment visit(String answer) {
        return visit(answer, true);
    }

    private static Appointment visit(String answer, boolean typed) {
        return new Appointment(
                UUID.randomUUID(),
                SITE,
                "SERVICE",
                MONDAY,
                LocalTime.of(9, 0),
                60,
                answer,
                "PLANNED",
                null,
                null,
                1,
                null,
                typed);
    }

    private static DueRow task(int until, int crew) {
        return task(until, crew, null);
    }

    private static DueRow task(int until, int crew, @Nullable UUID visit) {
        return new DueRow(
                UUID.randomUUID(),
                SITE,
                "Beck",
                UUID.randomUUID(),
                null,
                KIND,
                "Clean strainer",
                45,
                crew,
                2,
                MONDAY.plusDays(until - 10),
                MONDAY.plusDays(until - 40),
                MONDAY.plusDays(until),
                visit,
                -45.0,
                168.5);
    }
}
