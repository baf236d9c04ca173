package app.ramkeeper.upkeep.rules;

import static app.ramkeeper.upkeep.rules.Cases.day;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class PastTests {

    private final UUID first = new UUID(0, 1);
    private final UUID second = new UUID(0, 2);

    @Test
    void lateReportOfAnEarlierDayMovesNothingBack() {
        Past past = Past.of(
                List.of(Work.done(second, day("2026-05-10")), Work.done(first, day("2026-02-01"))),
                null,
                LastDone.NEVER);

        assertThat(past.lastDoneOn()).isEqualTo("2026-05-10");
        assertThat(past.report()).isEqualTo(second);
    }

    @Test
    void couldNotLeavesItDueWithTheReason() {
        Past past = Past.of(
                List.of(
                        Work.done(first, day("2024-05-10")),
                        Work.couldNot(second, day("2026-05-12"), Waiting.CANNOT_REACH, "gate locked")),
                null,
                LastDone.NEVER);

        assertThat(past.lastDoneOn()).isEqualTo("2024-05-10");
        assertThat(past.hindrance()).isNotNull();
        assertThat(past.hindrance().hindrance()).isEqualTo(Waiting.CANNOT_REACH);
    }

    @Test
    void doneLaterClearsTheHindrance() {
        Past past = Past.of(
                List.of(
                        Work.couldNot(first, day("2026-05-12"), Waiting.PARTS, null),
                        Work.done(second, day("2026-05-12"))),
                null,
                LastDone.NEVER);

        assertThat(past.hindrance()).as("done the same day, on the second try").isNull();
    }

    @Test
    void inspectedGoodNeverCountsAsDone() {
        Past past = Past.of(
                List.of(Work.inspectedGood(first, day("2026-05-12"), day("2026-11-01"))), null, LastDone.UNKNOWN);

        assertThat(past.lastDoneOn()).isNull();
        assertThat(past.lastDoneAs()).isEqualTo(LastDone.UNKNOWN);
        assertThat(past.lookAgainOn()).isEqualTo("2026-11-01");
    }

    @Test
    void latestInspectionCounts() {
        Past past = Past.of(
                List.of(
                        Work.inspectedGood(second, day("2026-08-01"), day("2026-12-01")),
                        Work.inspectedGood(first, day("2026-05-12"), day("2027-11-01"))),
                null,
                LastDone.NEVER);

        assertThat(past.lookAgainOn()).isEqualTo("2026-12-01");
        assertThat(past.lookedOn()).isEqualTo("2026-08-01");
    }

    @Test
    void ownerSaidAboutMay() {
        Past past = Past.of(List.of(), new Past.Stated(day("2026-05-15"), true), LastDone.UNKNOWN);

        assertThat(past.lastDoneOn()).isEqualTo("2026-05-15");
        assertThat(past.lastDoneAs()).isEqualTo(LastDone.ABOUT);
        assertThat(past.report()).isNull();
    }

    @Test
    void reportOnOrAfterAStatementTakesItsPlace() {
        Past.Stated stated = new Past.Stated(day("2026-05-15"), true);

        assertThat(Past.of(List.of(Work.done(first, day("2026-05-15"))), stated, LastDone.UNKNOWN)
                        .report())
                .isEqualTo(first);
        assertThat(Past.of(List.of(Work.done(first, day("2026-05-14"))), stated, LastDone.UNKNOWN)
                        .report())
                .isNull();
    }
}
