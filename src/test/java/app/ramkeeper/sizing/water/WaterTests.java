package app.ramkeeper.sizing.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Pressure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WaterTests {

    @Test
    void repeatsTheWorkedValues() {
        Water ten = Water.atCelsius(10);
        Water twenty = Water.atCelsius(20);

        assertThat(ten.density()).isCloseTo(999.70, within(0.005));
        assertThat(ten.dynamicViscosity()).isCloseTo(1.306e-3, within(0.5e-6));
        assertThat(ten.kinematicViscosity()).isCloseTo(1.306e-6, within(1e-9));
        assertThat(twenty.density()).isCloseTo(998.2, within(0.05));
        assertThat(twenty.dynamicViscosity()).isCloseTo(1.0016e-3, within(0.5e-6));
        assertThat(twenty.vapourPressure().pascals()).isCloseTo(2339, within(1.0));
        assertThat(twenty.isothermalBulkModulus()).isCloseTo(2.179e9, within(0.5e6));
        assertThat(twenty.soundSpeed()).isCloseTo(1482.4, within(0.05));
        assertThat(twenty.waveBulkModulus()).isCloseTo(2.194e9, within(1e6));
    }

    /** Speed of sound and vapour pressure in steam tables (IAPWS, from memory). */
    @ParameterizedTest(name = "at {0} degC from memory of steam tables: {1} m/s, {2} Pa")
    @CsvSource({"0, 1402.4, 611.2", "10, 1447.3, 1228", "25, 1496.7, 3169", "40, 1528.9, 7384"})
    void agreesWithSteamTables(double celsius, double sound, double vapour) {
        Water water = Water.atCelsius(celsius);

        assertThat(water.soundSpeed()).isCloseTo(sound, within(0.1));
        assertThat(water.vapourPressure().pascals()).isCloseTo(vapour, within(vapour * 0.001));
    }

    @Test
    void isDensestAtFourDegrees() {
        double densest = 0;
        double at = -1;
        for (double t = 0; t <= 40; t += 0.1) {
            double density = Water.atCelsius(t).density();
            if (density > densest) {
                densest = density;
                at = t;
            }
        }
        assertThat(at).isCloseTo(4, within(0.15));
        assertThat(densest).isCloseTo(999.972, within(0.0005));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.1, 40.1, -5, 60})
    void notesTemperaturesOutsideItsRange(double celsius) {
        assertThat(Water.atCelsius(celsius).notes())
                .singleElement()
                .extracting(Note::code)
                .isEqualTo(Note.Code.OUTSIDE_RANGE);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 40})
    void notesNothingInside(double celsius) {
        assertThat(Water.atCelsius(celsius).notes()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(doubles = {-5.1, 60.1})
    void refusesIceAndSteam(double celsius) {
        assertThatThrownBy(() -> Water.atCelsius(celsius))
                .isInstanceOf(ImpossibleInput.class)
                .hasMessageContaining("water temperature");
    }

    @Test
    void turnsHeadIntoPressureAndBack() {
        Ambient ambient = Ambient.standard();

        assertThat(ambient.specificWeight()).isCloseTo(9803.7, within(0.1));
        assertThat(ambient.pressureOf(new Head(50)).bar()).isCloseTo(4.902, within(0.0005));
        assertThat(ambient.headOf(Pressure.ofBar(5)).metres()).isCloseTo(51.0, within(0.05));
        assertThat(ambient.withGravity(9.81).specificWeight()).isCloseTo(9807.1, within(0.1));
        assertThat(Ambient.of(45, 0).notes()).hasSize(1);
        assertThat(Ambient.of(10, 2000).airPressure().pascals()).isCloseTo(79_495, within(1.0));
    }

    @Test
    void refusesImpossiblePlaces() {
        assertThatThrownBy(() -> Ambient.of(10, 9001)).hasMessageContaining("altitude");
        assertThatThrownBy(() -> Ambient.of(10, -501)).hasMessageContaining("altitude");
        assertThatThrownBy(() -> Ambient.standard().withGravity(0)).hasMessageContaining("gravity");
        assertThatThrownBy(() -> new Ambient(Water.atCelsius(10), 9.8, Pressure.NONE))
                .hasMessageContaining("air pressure");
    }
}
