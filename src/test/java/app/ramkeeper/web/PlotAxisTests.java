package app.ramkeeper.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlotAxisTests {

    @ParameterizedTest
    @CsvSource({"3.2, 9.7, 0, 10", "55, 61, 55, 61", "0.41, 0.68, 0.40, 0.70", "5, 5, 5, 6", "0, 0, 0, 1"})
    void coversTheValuesWithRoundTicks(double low, double high, double covers, double upTo) {
        PlotAxis axis = PlotAxis.ofNumbers(low, high, 0, 100, 5);

        assertThat(axis.from()).isLessThanOrEqualTo(covers + 1e-9);
        assertThat(axis.to()).isGreaterThanOrEqualTo(high);
        assertThat(axis.ticks()).hasSizeBetween(2, 12);
        assertThat(axis.at(low)).isBetween(0.0, 100.0);
        assertThat(upTo).isGreaterThanOrEqualTo(high);
    }

    @Test
    void standsAValueWhereItBelongs() {
        PlotAxis up = PlotAxis.ofNumbers(0, 10, 200, 20, 5);

        assertThat(up.at(0)).isEqualTo(200);
        assertThat(up.at(10)).isEqualTo(20);
        assertThat(up.at(5)).isEqualTo(110);
        assertThat(up.ticks()).extracting(PlotAxis.Tick::label).containsExactly("0", "2", "4", "6", "8", "10");
    }

    @Test
    void writesYearsAlongALongTime() {
        PlotAxis days = PlotAxis.ofDays(LocalDate.of(2019, 3, 1), LocalDate.of(2026, 11, 25), 0, 700);

        assertThat(days.ticks())
                .extracting(PlotAxis.Tick::label)
                .startsWith("2020")
                .endsWith("2026")
                .hasSize(7);
    }

    @Test
    void writesMonthsAlongAShortTime() {
        PlotAxis days = PlotAxis.ofDays(LocalDate.of(2026, 1, 20), LocalDate.of(2026, 11, 25), 0, 700);

        assertThat(days.ticks()).extracting(PlotAxis.Tick::label).containsExactly("Apr 2026", "Jul 2026", "Oct 2026");
    }
}
