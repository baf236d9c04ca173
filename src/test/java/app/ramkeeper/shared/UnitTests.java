package app.ramkeeper.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class UnitTests {

    // Factors from the definitions of the units in the SI brochure (9th edition 2019, tables 4 and 8).
    @ParameterizedTest
    @CsvSource({
        "LITRE_PER_MINUTE, 60, 0.001",
        "LITRE_PER_DAY, 86400, 0.001",
        "LITRE_PER_SECOND, 2, 0.002",
        "BAR, 4.5, 450000",
        "KILOPASCAL, 101.325, 101325",
        "CELSIUS, 20, 293.15",
        "PER_MINUTE, 60, 1",
        "MILLIMETRE, 25.4, 0.0254",
        "PERCENT, 65, 0.65"
    })
    void turnsIntoSi(Unit unit, double value, double si) {
        assertThat(unit.toSi(value)).isCloseTo(si, within(Math.abs(si) * 1e-12));
    }

    @ParameterizedTest
    @EnumSource
    void comesBackAsItWent(Unit unit) {
        assertThat(unit.fromSi(unit.toSi(12.75))).isCloseTo(12.75, within(1e-9));
    }

    @Test
    void comparesOnlyTheSameKindOfQuantity() {
        assertThat(Unit.LITRE_PER_DAY.comparableWith(Unit.LITRE_PER_MINUTE)).isTrue();
        assertThat(Unit.LITRE_PER_DAY.comparableWith(Unit.BAR)).isFalse();
    }
}
