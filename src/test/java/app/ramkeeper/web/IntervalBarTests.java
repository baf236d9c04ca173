package app.ramkeeper.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;

class IntervalBarTests {

    private static final LocalDate DONE = LocalDate.of(2024, 11, 25);
    private static final LocalDate DUE = LocalDate.of(2026, 11, 25);

    @Test
    void fillsUpToTheDueDate() {
        IntervalBar bar = IntervalBar.of(DONE, DUE, LocalDate.of(2025, 11, 25));

        assertThat(bar.run()).isEqualTo(40);
        assertThat(bar.past()).isZero();
        assertThat(bar.text()).isEqualTo("50 % of the interval has run, 365 days left");
    }

    @Test
    void hatchesWhatIsPast() {
        IntervalBar bar = IntervalBar.of(DONE, DUE, LocalDate.of(2027, 5, 25));

        assertThat(bar.run()).isEqualTo(bar.tick());
        assertThat(bar.past()).isBetween(19.0, 21.0);
        assertThat(bar.hatch()).startsWith("M81.0 11l3 -6");
        assertThat(bar.text()).endsWith("181 days past the due date");
    }

    @Test
    void oneDayIsADay() {
        assertThat(IntervalBar.of(DONE, DUE, DUE.plusDays(1)).text()).endsWith(", 1 day past the due date");
        assertThat(IntervalBar.of(DONE, DUE, DUE.minusDays(1)).text()).endsWith(", 1 day left");
    }

    @Test
    void staysWithinItsWidth() {
        assertThat(IntervalBar.of(DONE, DUE, LocalDate.of(2090, 1, 1)).past()).isEqualTo(40);
        assertThat(IntervalBar.of(DONE, null, DUE).tick()).isNegative();
        assertThat(IntervalBar.of(null, DUE, DUE).run()).isEqualTo(80);
    }
}
