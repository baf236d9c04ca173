package app.ramkeeper.upkeep.rules;

import static app.ramkeeper.upkeep.rules.Cases.day;
import static app.ramkeeper.upkeep.rules.Cases.event;
import static app.ramkeeper.upkeep.rules.Cases.everyMonths;
import static app.ramkeeper.upkeep.rules.Cases.season;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DueDateTests {

    private static LocalDate due(Terms terms, Standing standing) {
        return DueDate.of(terms, standing, List.of()).on();
    }

    @Test
    void countsFromTheLastDay() {
        DueDate due = DueDate.of(everyMonths(24), Standing.lastDone(day("2024-05-10")), List.of());

        assertThat(due).isEqualTo(new DueDate(day("2026-05-10"), day("2026-04-10"), day("2026-06-09")));
    }

    @Test
    void countsFromCommissioningWhileNeverDone() {
        assertThat(due(everyMonths(12), Standing.countingFrom(day("2025-03-01"))))
                .isEqualTo("2026-03-01");
    }

    @Test
    void knowsNoDateWithoutALastDay() {
        assertThat(due(everyMonths(12), Standing.unknown())).isNull();
    }

    @Test
    void inspectionSetsTheNextLookInPlaceOfTheInterval() {
        Standing inspected = Standing.lastDone(day("2024-01-10")).inspected(day("2026-01-05"), day("2026-07-01"));

        assertThat(due(everyMonths(24), inspected)).isEqualTo("2026-07-01");
        assertThat(inspected.base()).as("never the last day").isEqualTo("2024-01-10");
    }

    @Test
    void inspectionBeforeTheLastDayIsOver() {
        Standing changedSince = new Standing(day("2026-02-01"), null, day("2026-07-01"), day("2026-01-05"), null);

        assertThat(due(everyMonths(24), changedSince)).isEqualTo("2028-02-01");
    }

    @Test
    void inspectionGivesADateToAnUnknownOne() {
        assertThat(due(everyMonths(24), Standing.unknown().inspected(day("2026-01-05"), day("2026-12-01"))))
                .isEqualTo("2026-12-01");
    }

    @ParameterizedTest(name = "brought forward to {0}: due {1}")
    @CsvSource({"2026-03-01, 2026-03-01", "2026-05-10, 2026-05-10", "2026-09-01, 2026-05-10"})
    void conditionOnlyBringsADateForward(LocalDate to, LocalDate due) {
        Standing declining = Standing.lastDone(day("2024-05-10")).broughtForward(day("2026-01-01"), to);

        assertThat(due(everyMonths(24), declining)).isEqualTo(due);
    }

    @ParameterizedTest(name = "done on {0}: answered {1}")
    @CsvSource({"2025-12-31, false", "2026-01-01, true", "2026-02-01, true"})
    void doneSinceAnswersTheCondition(LocalDate lastDone, boolean answered) {
        Standing declining = Standing.lastDone(lastDone).broughtForward(day("2026-01-01"), day("2026-03-01"));

        assertThat(due(everyMonths(24), declining)).isEqualTo(answered ? lastDone.plusMonths(24) : day("2026-03-01"));
    }

    @Test
    void inspectionSinceAnswersTheCondition() {
        Standing looked = Standing.lastDone(day("2025-01-01"))
                .broughtForward(day("2026-01-01"), day("2026-02-01"))
                .inspected(day("2026-01-20"), day("2026-10-01"));

        assertThat(due(everyMonths(24), looked)).isEqualTo("2026-10-01");
    }

    @Test
    void eventIsDueOnlyOnceSomethingHappened() {
        assertThat(due(event(), Standing.countingFrom(day("2020-01-01")))).isNull();

        Standing flooded = Standing.unknown().broughtForward(day("2026-06-03"), day("2026-06-17"));
        assertThat(due(event(), flooded)).isEqualTo("2026-06-17");

        Standing lookedAt = Standing.lastDone(day("2026-06-10")).broughtForward(day("2026-06-03"), day("2026-06-17"));
        assertThat(due(event(), lookedAt)).isNull();
    }

    @ParameterizedTest(name = "before frost 15 May, last done {0}: due {1}")
    @CsvSource({
        "2025-05-10, 2026-05-15", // on time
        "2025-04-03, 2026-05-15", // first day of the window
        "2025-04-02, 2025-05-15", // a day too early counts for nothing
        "2025-05-30, 2026-05-15", // late, still for that season
        "2025-12-01, 2026-05-15" // far too late
    })
    void seasonComesRoundWhenItsWindowHadNotOpened(LocalDate lastDone, LocalDate due) {
        assertThat(due(season(5, 15), Standing.lastDone(lastDone))).isEqualTo(due);
    }

    @ParameterizedTest(name = "commissioned {0}: first season {1}")
    @CsvSource({"2025-05-15, 2025-05-15", "2025-05-16, 2026-05-15", "2025-01-01, 2025-05-15"})
    void firstSeasonIsTheNextOne(LocalDate commissioned, LocalDate due) {
        assertThat(due(season(5, 15), Standing.countingFrom(commissioned))).isEqualTo(due);
    }

    @Test
    @DisplayName("FLT-10 keeps a season on 29 February to the last of the month")
    void leapDaySeason() {
        assertThat(due(season(2, 29), Standing.countingFrom(day("2026-01-01")))).isEqualTo("2026-02-28");
        assertThat(due(season(2, 29), Standing.countingFrom(day("2028-01-01")))).isEqualTo("2028-02-29");
    }

    @Test
    @DisplayName("FLT-10 forecasts from the last day, never from the forecast before")
    void forecastsWithoutDrift() {
        assertThat(DueDate.forecast(everyMonths(1), Standing.lastDone(day("2026-01-31")), List.of(), 4))
                .containsExactly(day("2026-02-28"), day("2026-03-31"), day("2026-04-30"), day("2026-05-31"));
        assertThat(DueDate.forecast(season(5, 15), Standing.lastDone(day("2025-05-10")), List.of(), 3))
                .containsExactly(day("2026-05-15"), day("2027-05-15"), day("2028-05-15"));
        assertThat(DueDate.forecast(everyMonths(1), Standing.unknown(), List.of(), 4))
                .isEmpty();
    }
}
