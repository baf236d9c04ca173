package app.ramkeeper.rounds.week;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.rounds.week.Horizon.Move;
import app.ramkeeper.rounds.week.Horizon.Outlook;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class HorizonTests {

    private static final LocalDate MONDAY = LocalDate.of(2026, 11, 30);
    private static final UUID BECK = UUID.randomUUID();

    @Test
    void bringsForwardWhatIsDueLaterAtASiteThatIsVisitedAnyway() {
        DueRow now = task(BECK, "Beck", "Valve rubber", 2, 0, 10, -45.0, 168.5);
        DueRow later = task(BECK, "Beck", "Clean strainer", 20, 3, 40, -45.0, 168.5);

        Outlook outlook = Horizon.from(MONDAY, List.of(later, now), week -> 2_000);

        assertThat(outlook.moves()).singleElement().satisfies(move -> {
            assertThat(move.taskId()).isEqualTo(later.taskId());
            assertThat(move.from()).isEqualTo(MONDAY.plusWeeks(2));
            assertThat(move.to()).isEqualTo(MONDAY);
            assertThat(move.why()).contains("visited that week anyway", "Valve rubber");
        });
    }

    @Test
    void neverMovesATaskOutOfItsWindow() {
        DueRow now = task(BECK, "Beck", "Valve rubber", 2, 0, 10, -45.0, 168.5);
        DueRow later = task(BECK, "Beck", "Clean strainer", 20, 15, 40, -45.0, 168.5);

        assertThat(Horizon.from(MONDAY, List.of(later, now), week -> 2_000).moves())
                .isEmpty();
    }

    @Test
    void takesWhatLiesAloneToTheWeekOfItsNeighbour() {
        DueRow alone = task(UUID.randomUUID(), "Far spring", "Clean strainer", 2, -10, 30, -45.40, 169.2);
        DueRow other = task(UUID.randomUUID(), "Beck", "Valve rubber", 3, 0, 5, -45.0, 168.5);
        DueRow near = task(UUID.randomUUID(), "Far tank", "Valve rubber", 16, 14, 20, -45.41, 169.21);

        List<Move> moves =
                Horizon.from(MONDAY, List.of(alone, other, near), week -> 2_000).moves();

        assertThat(moves).singleElement().satisfies(move -> {
            assertThat(move.site()).isEqualTo("Far spring");
            assertThat(move.to()).isEqualTo(MONDAY.plusWeeks(2));
            assertThat(move.why()).contains("1 km from Far tank");
        });
    }

    @Test
    void aSiteIsNoNeighbourOfItself() {
        UUID far = UUID.randomUUID();
        DueRow alone = task(far, "Far spring", "Clean strainer", 2, -10, 40, -45.40, 169.2);
        DueRow other = task(UUID.randomUUID(), "Beck", "Valve rubber", 3, 0, 5, -45.0, 168.5);
        DueRow again = task(far, "Far spring", "Valve rubber", 30, 28, 34, -45.40, 169.2);

        assertThat(Horizon.from(MONDAY, List.of(alone, other, again), week -> 2_000)
                        .moves())
                .noneMatch(move -> move.why().contains("from Far spring"));
    }

    @Test
    void relievesAFullWeekOfTheLightestThatMayWait() {
        DueRow heavy = task(UUID.randomUUID(), "Beck", "Valve rubber", 2, -5, 30, -45.0, 168.5, 9);
        DueRow light = task(UUID.randomUUID(), "Gill", "Clean strainer", 2, -5, 30, -45.2, 168.7, 1);
        DueRow last = task(UUID.randomUUID(), "Tarn", "Valve rubber", 2, -5, 4, -45.1, 168.1, 1);

        Outlook outlook = Horizon.from(MONDAY, List.of(heavy, light, last), week -> 180);

        assertThat(outlook.moves()).singleElement().satisfies(move -> {
            assertThat(move.site()).isEqualTo("Gill");
            assertThat(move.to()).isEqualTo(MONDAY.plusWeeks(1));
            assertThat(move.why()).contains("is full", "window is open until");
        });
        assertThat(outlook.weeks().get(0).before()).isGreaterThan(3);
        assertThat(outlook.weeks().get(0).after()).isLessThan(3);
    }

    @Test
    void keepsWhatGoesTogetherWithinTheWindowsOfBoth() {
        DueRow now = task(BECK, "Beck", "Valve rubber", 16, -20, 25, -45.0, 168.5);
        DueRow later = task(BECK, "Beck", "Clean strainer", 22, 15, 25, -45.0, 168.5);

        Outlook outlook = Horizon.from(MONDAY, List.of(later, now), week -> week.isEqual(MONDAY) ? 2_000 : 0);

        assertThat(outlook.moves()).singleElement().satisfies(move -> {
            assertThat(move.taskId()).isEqualTo(later.taskId());
            assertThat(move.to()).as("its window opens that week").isEqualTo(MONDAY.plusWeeks(2));
        });
    }

    @Test
    void countsWhatIsDueLaterThanTheEightWeeksOnlyWhereItComesForward() {
        DueRow alone = task(UUID.randomUUID(), "Far spring", "Overhaul", 80, 40, 120, -45.40, 169.2);
        DueRow now = task(BECK, "Beck", "Valve rubber", 37, 30, 41, -45.0, 168.5);
        DueRow later = task(BECK, "Beck", "Overhaul", 80, 30, 120, -45.0, 168.5);

        Outlook outlook = Horizon.from(MONDAY, List.of(alone, now, later), week -> 2_000);

        assertThat(outlook.weeks().get(7).before())
                .as("due in week 12, not in the last of eight")
                .isZero();
        assertThat(outlook.weeks().get(7).after()).isZero();
        assertThat(outlook.moves()).singleElement().satisfies(move -> {
            assertThat(move.taskId()).isEqualTo(later.taskId());
            assertThat(move.from()).isEqualTo(MONDAY.plusWeeks(11));
            assertThat(move.to()).isEqualTo(MONDAY.plusWeeks(5));
        });
    }

    @Test
    void bringsASitesTasksOfLaterForwardIntoFullWeeks() {
        DueRow one = task(BECK, "Beck", "Overhaul", 80, 40, 120, -45.40, 169.2);
        DueRow two = task(BECK, "Beck", "Inspect seals", 80, 40, 120, -45.40, 169.2);
        DueRow near = task(UUID.randomUUID(), "Far tank", "Valve rubber", 38, 36, 41, -45.41, 169.21);

        Outlook outlook = Horizon.from(MONDAY, List.of(one, two, near), week -> 60);

        assertThat(outlook.weeks()).hasSize(8);
        assertThat(outlook.moves()).allSatisfy(move -> assertThat(move.to()).isBefore(MONDAY.plusWeeks(8)));
    }

    @Test
    void leavesAFullWeekFullWhereNothingMayWait() {
        DueRow one = task(UUID.randomUUID(), "Beck", "Valve rubber", 2, -5, 4, -45.0, 168.5);
        DueRow two = task(UUID.randomUUID(), "Gill", "Valve rubber", -90, -120, -60, -45.2, 168.7);

        Outlook outlook = Horizon.from(MONDAY, List.of(one, two), week -> 60);

        assertThat(outlook.moves()).isEmpty();
        assertThat(outlook.weeks().get(0).after())
                .isGreaterThan(outlook.weeks().get(0).room());
    }

    private static DueRow task(
            UUID site, String name, String kind, int due, int from, int until, double lat, double lon) {
        return task(site, name, kind, due, from, until, lat, lon, 3);
    }

    private static DueRow task(
            UUID site, String name, String kind, int due, int from, int until, double lat, double lon, double weight) {
        return new DueRow(
                UUID.randomUUID(),
                site,
                name,
                UUID.randomUUID(),
                null,
                UUID.randomUUID(),
                kind,
                60,
                1,
                weight,
                MONDAY.plusDays(due),
                MONDAY.plusDays(from),
                MONDAY.plusDays(until),
                null,
                lat,
                lon);
    }
}
