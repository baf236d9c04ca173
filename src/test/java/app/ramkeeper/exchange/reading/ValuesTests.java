package app.ramkeeper.exchange.reading;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.shared.Unit;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ValuesTests {

    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    @ParameterizedTest
    @CsvSource({
        "2024-02-29, DAY_FIRST, 2024-02-29",
        "2024/2/9, MONTH_FIRST, 2024-02-09",
        "2024-02-29T10:15:00, DAY_FIRST, 2024-02-29",
        "01.02.2026, MONTH_FIRST, 2026-02-01",
        "03/04/2026, DAY_FIRST, 2026-04-03",
        "03/04/2026, MONTH_FIRST, 2026-03-04",
        "3-4-26, DAY_FIRST, 2026-04-03",
        "3/4/98, DAY_FIRST, 1998-04-03",
        "3/4/2026 14:30, DAY_FIRST, 2026-04-03",
        "5 Mar 2024, DAY_FIRST, 2024-03-05",
        "5-Sept-24, DAY_FIRST, 2024-09-05",
        "'March 5th, 2024', DAY_FIRST, 2024-03-05"
    })
    @DisplayName("FLT-26 reads dates")
    void readsDates(String text, DateOrder order, LocalDate expected) {
        assertThat(Dates.read(text, order, TODAY)).contains(expected);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "soon", "2017", "31/02/2024", "29.02.2023", "13/13/2024", "2024-00-10", "1/2/2024/5", "45321"
            })
    void refusesWhatIsNoDate(String text) {
        assertThat(Dates.read(text, DateOrder.DAY_FIRST, TODAY)).isEmpty();
    }

    @Test
    void asksForTheDateOrderOnlyWhenNothingTells() {
        assertThat(evidence("03/04/2026", "05/06/2025").ambiguousDate()).contains("03/04/2026");
        assertThat(evidence("03/04/2026", "25/06/2025").order()).contains(DateOrder.DAY_FIRST);
        assertThat(evidence("03/04/2026", "06/25/2025").order()).contains(DateOrder.MONTH_FIRST);
        assertThat(evidence("03/04/2026", "06/25/2025", "25/06/2025").ambiguousDate())
                .isPresent();
        assertThat(evidence("2026-04-03", "03.04.2026", "4/4/2026").ambiguousDate())
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '#',
            value = {
                "12,5#COMMA#12.5", "12.5#COMMA#12.5", "1.250#COMMA#1250", "1.250,5#COMMA#1250.5", "1.250#POINT#1.250",
                "1,250#POINT#1250", "12,5#POINT#12.5", "-5#POINT#-5", "−5,2#COMMA#-5.2", "1 250,5#COMMA#1250.5"
            })
    @DisplayName("FLT-26 reads decimal commas and points")
    void readsNumbers(String text, DecimalMark mark, BigDecimal expected) {
        assertThat(mark.read(text)).contains(expected);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "x", "1.2.3", "12a", "--5", "1e9", "NaN", "9999999999999999999999"})
    void refusesWhatIsNoNumber(String text) {
        assertThat(DecimalMark.POINT.read(text)).isEmpty();
    }

    @Test
    void seesTheDecimalMark() {
        assertThat(evidence("12,5", "1.250").decimalComma()).isTrue();
        assertThat(evidence("12.5").decimalComma()).isFalse();
        assertThat(evidence("1,250", "3").ambiguousNumber()).contains("1,250");
        assertThat(evidence("1,250", "3.75").ambiguousNumber()).isEmpty();
    }

    @Test
    void readsQuantitiesWithTheirUnit() {
        assertThat(Quantities.read("0,5 l/s", DecimalMark.COMMA, Unit.LITRE_PER_MINUTE)
                        .orElseThrow()
                        .unit())
                .isEqualTo(Unit.LITRE_PER_SECOND);
        assertThat(Quantities.read("12.5", DecimalMark.POINT, Unit.LITRE_PER_MINUTE)
                        .orElseThrow()
                        .toString())
                .isEqualTo("12.5 l/min");
        assertThat(Quantities.read("12 bar", DecimalMark.POINT, Unit.METRE)).isEmpty();
        assertThat(Quantities.ofHeading("Delivered (l/day)", Unit.LITRE_PER_MINUTE))
                .contains(Unit.LITRE_PER_DAY);
        assertThat(Quantities.ofHeading("Fall m", Unit.METRE)).contains(Unit.METRE);
        assertThat(Quantities.ofHeading("Fall", Unit.METRE)).isEmpty();
    }

    private static Evidence evidence(@Nullable String... cells) {
        Evidence evidence = new Evidence();
        Arrays.stream(cells).forEach(cell -> evidence.see(String.valueOf(cell)));
        return evidence;
    }
}
