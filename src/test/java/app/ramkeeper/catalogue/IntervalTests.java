package app.ramkeeper.catalogue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigDecimal;
import java.time.LocalDate;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class IntervalTests {

    @ParameterizedTest(name = "{0} + {1} months {2} days = {3}")
    @DisplayName("FLT-10 adds an interval in one step over month ends and leap days")
    @CsvSource({
        "2026-01-31, 1, 0, 2026-02-28",
        "2026-01-31, 2, 0, 2026-03-31",
        "2028-01-31, 1, 0, 2028-02-29",
        "2024-02-29, 12, 0, 2025-02-28",
        "2024-02-29, 48, 0, 2028-02-29",
        "2026-08-31, 6, 0, 2027-02-28",
        "2026-10-31, 1, 1, 2026-12-01",
        "2026-12-31, 0, 60, 2027-03-01",
        "2099-11-30, 3, 0, 2100-02-28"
    })
    void addsInOneStep(LocalDate from, int months, int days, LocalDate due) {
        assertThat(new Interval(months, days).after(from)).isEqualTo(due);
    }

    @Test
    @DisplayName("FLT-10 repeats every three months from 31 January without drift")
    void repeatsWithoutDrift() {
        LocalDate last = LocalDate.of(2026, 1, 31);
        Interval quarter = Interval.ofMonths(3);

        assertThat(quarter.times(1).after(last)).isEqualTo("2026-04-30");
        assertThat(quarter.times(2).after(last)).isEqualTo("2026-07-31");
        assertThat(quarter.times(3).after(last)).isEqualTo("2026-10-31");
        assertThat(quarter.times(4).after(last)).isEqualTo("2027-01-31");
    }

    @ParameterizedTest(name = "{0} months {1} days x {2} = {3} months {4} days")
    @CsvSource({
        "24, 0, 0.5, 12, 0",
        "24, 0, 0.75, 18, 0",
        "3, 0, 0.5, 1, 15",
        "5, 0, 0.5, 2, 15",
        "12, 0, 1.25, 15, 0",
        "0, 14, 0.5, 0, 7",
        "0, 1, 0.1, 0, 1",
        "1, 0, 0.1, 0, 3",
        "24, 0, 1, 24, 0",
        "0, 0, 0.5, 0, 0"
    })
    void scalesByTheWater(int months, int days, BigDecimal factor, int newMonths, int newDays) {
        assertThat(new Interval(months, days).scaled(factor)).isEqualTo(new Interval(newMonths, newDays));
    }

    @ParameterizedTest
    @CsvSource({
        "24, 0, 2 years",
        "12, 0, 1 year",
        "18, 0, 18 months",
        "1, 15, 1 month 15 days",
        "0, 1, 1 day",
        "0, 0, –"
    })
    void saysItselfInWords(int months, int days, String words) {
        assertThat(new Interval(months, days).words()).isEqualTo(words);
    }

    @Test
    @DisplayName("SEC-15 refuses a negative interval")
    void refusesNegative() {
        assertThatIllegalArgumentException().isThrownBy(() -> new Interval(-1, 0));
    }
}
