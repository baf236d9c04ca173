package app.ramkeeper.rounds.week;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.fleet.Position;
import app.ramkeeper.rounds.travel.Leg;
import app.ramkeeper.rounds.week.Bundle.Lengths;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Whether planned visits may become longer beside what is agreed; every leg takes ten minutes, the day lasts from 07:30 to 17:00. */
class RoomTests {

    private static final LocalDate MONDAY = LocalDate.of(2026, 11, 30);
    private static final LocalDate DAY = MONDAY.plusDays(2);
    private static final UUID WHO = UUID.randomUUID();
    private static final Position HERE = new Position(-45.0, 168.5);

    @Test
    void anAgreedVisitGrowsUntilTheNextAgreedOneWouldBeLate() {
        Stop first = stop(1, LocalTime.of(8, 0), 5);
        Stop second = stop(2, LocalTime.of(10, 0), 4);

        assertThat(minutes(week(first, second), Map.of(first.id(), new Lengths(60, 90, 115))))
                .as("ends 09:55, there at 10:05")
                .containsEntry(first.id(), 115);
        assertThat(minutes(week(first, second), Map.of(first.id(), new Lengths(60, 90, 130))))
                .as("no room for what rides along")
                .containsEntry(first.id(), 90);
        assertThat(minutes(week(first, second), Map.of(first.id(), new Lengths(60, 130, 160))))
                .as("nor for all that it asks for")
                .containsEntry(first.id(), 60);
    }

    @Test
    void theDearestGrowsFirstAndTheDaysEndHolds() {
        Stop cheap = stop(1, LocalTime.of(8, 0), 5);
        Stop dear = stop(2, LocalTime.of(14, 30), 50);
        Lengths longer = new Lengths(60, 60, 130);

        assertThat(minutes(week(cheap, dear), Map.of(cheap.id(), longer, dear.id(), longer)))
                .containsEntry(cheap.id(), 130)
                .containsEntry(dear.id(), 130);
        assertThat(minutes(week(cheap, dear), Map.of(cheap.id(), longer, dear.id(), new Lengths(60, 60, 160))))
                .as("16:50 and ten minutes home would be late")
                .containsEntry(dear.id(), 60);
    }

    @Test
    void whatTheOptimiserMayMoveIsNoneOfIt() {
        Stop open = stop(1, null, 5);
        Lengths longer = new Lengths(60, 60, 700);

        assertThat(minutes(week(open), Map.of(open.id(), longer))).isEmpty();
        assertThat(new Room(week(open), DAY, Map.of(open.id(), longer)).minutes())
                .as("today it is not moved any more")
                .containsEntry(open.id(), 60);
    }

    @Test
    void aDayThatIsTooLongAlreadyGetsNoLonger() {
        Stop first = stop(1, LocalTime.of(8, 0), 5);
        Stop last = stop(2, LocalTime.of(16, 30), 4);

        assertThat(minutes(week(first, last), Map.of(last.id(), new Lengths(60, 90, 120))))
                .containsEntry(last.id(), 60);
    }

    private static Map<UUID, Integer> minutes(Week week, Map<UUID, Lengths> lengths) {
        return new Room(week, MONDAY, lengths).minutes();
    }

    private static Week week(Stop... stops) {
        TechDay round = new TechDay(
                WHO,
                "Ana",
                DAY,
                null,
                450,
                1020,
                540,
                30,
                new Position(-45.1, 168.6),
                new Position(-45.1, 168.6),
                Set.of(),
                null,
                null,
                null,
                false,
                null);
        Rules rules = new Rules(new Hours(Map.of(), Map.of()), new Supplies(Map.of(), List.of()), Map.of());
        return new Week(
                new WeekPlan(UUID.randomUUID(), MONDAY, 1, null, null, null, null),
                List.of(stops),
                List.of(round),
                new Drive((from, to) -> new Leg(10, 8000), rules));
    }

    /** A planned visit of an hour, agreed for a time or not agreed. */
    private static Stop stop(int position, @Nullable LocalTime agreed, double worth) {
        Position where = new Position(HERE.latitude(), HERE.longitude() + position * 0.01);
        return PlainStop.of(UUID.randomUUID(), where, 60, agreed, worth, WHO, DAY, position);
    }
}
