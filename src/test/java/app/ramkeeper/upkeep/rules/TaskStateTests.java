package app.ramkeeper.upkeep.rules;

import static app.ramkeeper.upkeep.rules.Cases.day;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TaskStateTests {

    private static final DueDate DUE = new DueDate(day("2026-05-10"), day("2026-04-10"), day("2026-06-09"));
    private static final DueDate NONE = new DueDate(null, null, null);

    @ParameterizedTest(name = "on {0}: {1}")
    @CsvSource({
        "2026-04-09, NOT_YET",
        "2026-04-10, IN_WINDOW",
        "2026-05-09, IN_WINDOW",
        "2026-05-10, DUE",
        "2026-06-09, DUE",
        "2026-06-10, OVERDUE"
    })
    void followsTheWindow(LocalDate today, TaskState state) {
        assertThat(TaskState.of(DoneBy.US, LastDone.KNOWN, DUE, null, null, today))
                .isEqualTo(state);
    }

    @ParameterizedTest(name = "asleep {0} to {1}, on {2}: {3}")
    @CsvSource({
        "2026-06-01, , 2026-08-01, ASLEEP",
        "2026-06-01, 2026-09-01, 2026-08-31, ASLEEP",
        "2026-06-01, 2026-09-01, 2026-09-01, OVERDUE",
        "2026-08-02, , 2026-08-01, OVERDUE"
    })
    void sleepsUntilItWakes(LocalDate since, @Nullable LocalDate wakes, LocalDate today, TaskState state) {
        assertThat(TaskState.of(DoneBy.US, LastDone.KNOWN, DUE, since, wakes, today))
                .isEqualTo(state);
    }

    @ParameterizedTest
    @CsvSource({"US, UNKNOWN, UNKNOWN", "US, NEVER, PLANNED", "OWNER, UNKNOWN, BY_OWNER", "DECLINED, KNOWN, DECLINED"})
    void withoutADate(DoneBy doneBy, LastDone last, TaskState state) {
        assertThat(TaskState.of(doneBy, last, NONE, null, null, day("2026-01-01")))
                .isEqualTo(state);
    }
}
