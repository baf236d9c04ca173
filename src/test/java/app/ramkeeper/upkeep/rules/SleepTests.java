package app.ramkeeper.upkeep.rules;

import static app.ramkeeper.upkeep.rules.Cases.day;
import static app.ramkeeper.upkeep.rules.Cases.everyMonths;
import static app.ramkeeper.upkeep.rules.Cases.everyRunningDays;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SleepTests {

    private static final Idle WINTER = new Idle(day("2026-06-01"), day("2026-09-01"), true);

    @ParameterizedTest(name = "last done {0}: due {1}")
    @CsvSource({
        "2025-05-20, 2026-05-20", // was due before the sleep: stays late
        "2025-06-01, 2026-09-15", // falls due on the first day asleep
        "2025-07-10, 2026-09-15", // falls due while asleep
        "2025-09-05, 2026-09-15", // falls due within the grace
        "2025-09-15, 2026-09-15", // the day the grace ends
        "2025-10-01, 2026-10-01" // after it: untouched
    })
    void wakesWithAGrace(LocalDate lastDone, LocalDate due) {
        assertThat(DueDate.of(everyMonths(12), Standing.lastDone(lastDone), List.of(WINTER))
                        .on())
                .isEqualTo(due);
    }

    @Test
    void stopIsNoSleep() {
        Idle stopped = new Idle(day("2026-06-01"), day("2026-09-01"), false);

        assertThat(DueDate.of(everyMonths(12), Standing.lastDone(day("2025-07-10")), List.of(stopped))
                        .on())
                .isEqualTo("2026-07-10");
    }

    @Test
    void graceMayReachIntoTheNextSleep() {
        Idle next = new Idle(day("2026-09-10"), day("2026-10-01"), true);

        assertThat(DueDate.of(everyMonths(12), Standing.lastDone(day("2025-07-10")), List.of(next, WINTER))
                        .on())
                .isEqualTo("2026-10-15");
    }

    @ParameterizedTest(name = "{0} running days from 1 January: due {1}")
    @CsvSource({
        "100, 2026-04-11", // all before the sleep
        "151, 2026-09-01", // used up on the day it fell asleep: due when it wakes
        "152, 2026-09-02",
        "200, 2026-10-20"
    })
    void dormantDaysDoNotWear(int days, LocalDate due) {
        Terms noGrace = new Terms(
                everyRunningDays(days).schedule(),
                everyRunningDays(days).interval(),
                everyRunningDays(days).life(),
                0,
                0,
                0,
                null);

        assertThat(DueDate.of(noGrace, Standing.lastDone(day("2026-01-01")), List.of(WINTER))
                        .on())
                .isEqualTo(due);
    }

    @Test
    void idleTimeBeforeTheLastDayDoesNotCount() {
        assertThat(DueDate.of(everyRunningDays(30), Standing.lastDone(day("2026-10-01")), List.of(WINTER))
                        .on())
                .isEqualTo("2026-10-31");
    }

    @Test
    void doneWhileAsleepCountsFromWaking() {
        assertThat(DueDate.of(everyRunningDays(30), Standing.lastDone(day("2026-07-01")), List.of(WINTER))
                        .on())
                .isEqualTo("2026-10-01");
    }

    @Test
    void openEndedIdleTimeIsCountedOnceItEnds() {
        Idle open = new Idle(day("2026-06-01"), null, true);

        assertThat(DueDate.of(everyRunningDays(200), Standing.lastDone(day("2026-01-01")), List.of(open))
                        .on())
                .isEqualTo("2026-07-20");
    }
}
