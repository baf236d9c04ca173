package app.ramkeeper.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MoneyTests {

    @ParameterizedTest
    @CsvSource({"12, day, 12 days", "1.0, day, 1 day", "0.5, day, 0.5 days", "18, m, 18 m", "100, piece, 100 pieces"})
    void countsWordsInThePluralAndLeavesSigns(BigDecimal number, String unit, String words) {
        assertThat(new Money().count(number, unit)).isEqualTo(words.replace(' ', '\u00A0'));
    }
}
