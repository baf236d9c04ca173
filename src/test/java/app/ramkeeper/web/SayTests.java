package app.ramkeeper.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SayTests {

    // 24 November 2026, 23:30 in UTC is already the 25th in the company's zone
    private final Say say = new Say(Clock.fixed(Instant.parse("2026-11-24T23:30:00Z"), ZoneId.of("Pacific/Auckland")));

    @ParameterizedTest
    @CsvSource({"2026-12-07, in 12 days", "2026-10-22, 34 days late", "2026-11-25, today", "2026-11-26, in 1 day"})
    void saysDueDatesFromToday(LocalDate date, String words) {
        assertThat(say.due(date)).isEqualTo(words);
    }

    @ParameterizedTest
    @CsvSource({"2026-11-22, 3 days ago", "2025-09-25, 14 months ago", "2020-11-25, 6 years ago", "2026-11-25, today"})
    void saysPastDatesFromToday(LocalDate date, String words) {
        assertThat(say.ago(date)).isEqualTo(words);
    }

    @Test
    void saysDatesWithTheirWeekday() {
        assertThat(say.date(LocalDate.of(2026, 11, 24))).isEqualTo("Tue 24 Nov 2026");
        assertThat(say.moment(Instant.parse("2026-11-24T23:30:00Z"))).isEqualTo("Wed 25 Nov 2026 12:30");
    }

    @ParameterizedTest
    @CsvSource({"0.0002, 12.0 l/min", "0.00000983, 0.590 l/min", "0.5, 30 000 l/min"})
    void saysFlowsWithThreeFigures(double si, String words) {
        assertThat(say.perMinute(si)).isEqualTo(words);
    }

    @Test
    void saysWhatIsAbsent() {
        assertThat(say.date(null)).isEqualTo("–");
        assertThat(say.bar(null)).isEqualTo("–");
        assertThat(say.due(null)).isEqualTo("date unknown");
    }
}
