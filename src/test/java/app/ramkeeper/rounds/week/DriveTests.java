package app.ramkeeper.rounds.week;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.fleet.Position;
import app.ramkeeper.rounds.travel.Leg;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** When a round sets out; each leg takes ten minutes, the day begins at 07:30. */
class DriveTests {

    private static final LocalDate DAY = LocalDate.of(2026, 12, 4);
    private static final Position DEPOT = new Position(-45, 168);
    private static final UUID WHO = UUID.randomUUID();

    private final Drive drive = new Drive(
            (from, to) -> new Leg(10, 10_000),
            new Rules(new Hours(Map.of(), Map.of()), new Supplies(Map.of(), List.of()), Map.of()));

    @Test
    void setsOutLateOnlyAsFarAsNobodyWhoAgreedWaits() {
        DayTimes times = drive.through(day(600), List.of(stop(LocalTime.of(8, 0), 60), stop(LocalTime.of(9, 30), 60)));

        assertThat(times.leaves()).isEqualTo(7 * 60 + 50);
        assertThat(times.lines()).extracting(DayTimes.Line::starts).containsExactly(8 * 60.0, 9 * 60.0 + 30);
        assertThat(times.breaches()).isEmpty();
    }

    @Test
    void doesNotMissAnAgreedTimeToMakeALongDayShorter() {
        DayTimes times = drive.through(day(240), List.of(stop(LocalTime.of(8, 0), 60), stop(LocalTime.of(11, 0), 60)));

        assertThat(times.lines()).extracting(DayTimes.Line::starts).containsExactly(8 * 60.0, 11 * 60.0);
        assertThat(times.breaches())
                .extracting(DayTimes.Breach::words)
                .singleElement(org.assertj.core.api.InstanceOfAssertFactories.STRING)
                .startsWith("the day lasts 4 h 20 min");
    }

    @Test
    void comesAFewMinutesLateWhereTheDayWouldElseBeTooLong() {
        DayTimes times = drive.through(day(250), List.of(stop(LocalTime.of(8, 0), 60), stop(LocalTime.of(11, 0), 60)));

        assertThat(times.leaves()).isEqualTo(8 * 60);
        assertThat(times.lines()).extracting(DayTimes.Line::starts).containsExactly(8 * 60.0 + 10, 11 * 60.0);
        assertThat(times.breaches()).isEmpty();
    }

    @Test
    void whereNothingIsAgreedItWaitsAtHomeForTheGateToOpen() {
        UUID site = UUID.randomUUID();
        Drive gated = new Drive(
                drive.legs(),
                new Rules(
                        new Hours(
                                Map.of(
                                        site,
                                        List.of(new Hours.Access(
                                                site, DAY.getDayOfWeek().getValue(), 600, 900))),
                                Map.of()),
                        new Supplies(Map.of(), List.of()),
                        Map.of()));

        assertThat(gated.through(day(600), List.of(stop(site, null, 60))).leaves())
                .isEqualTo(590);
    }

    private static TechDay day(int longest) {
        return new TechDay(
                WHO, "Ana", DAY, null, 450, 1020, longest, 0, DEPOT, DEPOT, Set.of(), null, null, null, false, null);
    }

    private static Stop stop(LocalTime agreed, int minutes) {
        return stop(UUID.randomUUID(), agreed, minutes);
    }

    private static Stop stop(UUID site, @Nullable LocalTime agreed, int minutes) {
        double aside = minutes / 1e4 + (agreed == null ? 0 : agreed.toSecondOfDay() / 1e6);
        return PlainStop.of(site, new Position(-44.9, 168.1 + aside), minutes, agreed, 100, WHO, DAY, 1);
    }
}
