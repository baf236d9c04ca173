package app.ramkeeper.sizing.surge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.pipe.PipeMaterial;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.surge.Pulses.Place;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SurgeTests {

    @Test
    void joinsQuickAndSlowClosing() {
        // 2 L / a is 2 s: Joukowsky to there, Michaud's 2 rho L v / t beyond
        assertThat(Surge.returnTime(1000, 1000)).isEqualTo(2);
        assertThat(Surge.returnTime(12, 1300)).isCloseTo(0.01846, within(1e-5));
        assertThat(Surge.closing(1000, 1000, 1000, 1.2, 0).kilopascals()).isCloseTo(1200, within(1e-9));
        assertThat(Surge.closing(1000, 1000, 1000, 1.2, 2).kilopascals()).isCloseTo(1200, within(1e-9));
        assertThat(Surge.closing(1000, 1000, 1000, 1.2, 4).kilopascals()).isCloseTo(600, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"UPSTREAM_END, 0.85", "THROUGHOUT, 0.91", "EXPANSION_JOINTS, 1"})
    void turnsIntoTheThinWalledFactor(Anchorage anchorage, double thin) {
        assertThat(anchorage.factor(0.3, 1, 1e-9)).isCloseTo(thin, within(1e-6));
        // 2 x 0.1 x 1.3 + thin / 1.1
        assertThat(anchorage.factor(0.3, 1, 0.1)).isCloseTo(0.26 + thin / 1.1, within(1e-12));
    }

    @Test
    void holdsPartsAgainstTheShutDelivery() {
        Pressure shut = Pressure.ofBar(13.2);
        DeadHead all = DeadHead.check(shut, List.of(part("pump", 16), part("vessel", 10), part("pipe", 16)));

        assertThat(all.checks()).extracting(check -> check.rule()).first().isEqualTo("Shut delivery against vessel");
        assertThat(all.notes())
                .singleElement()
                .satisfies(note -> assertThat(note.sentence())
                        .contains("may climb to 13.2 bar and the weakest part is rated 10.0 bar")
                        .contains("overflow")
                        .contains("relief valve"));
        assertThat(DeadHead.check(shut, List.of(part("pump", 16))).notes()).isEmpty();
        assertThat(DeadHead.check(shut, List.of(part("pump", 13.2))).notes()).isEmpty();
        assertThatThrownBy(() -> DeadHead.check(shut, List.of())).hasMessageContaining("at least one part");
        assertThatThrownBy(() -> part(" ", 1)).hasMessageContaining("part name");
        assertThatThrownBy(() -> part("pump", 0)).hasMessageContaining("pressure rating");
    }

    @ParameterizedTest
    @CsvSource({
        "PVC_U, DRIVE_PIPE, false",
        "PVC_U, BESIDE_PUMP, false",
        "PVC_U, BEYOND_VESSEL, true",
        "PE100, BESIDE_PUMP, true",
        "GALVANISED_STEEL, DRIVE_PIPE, true"
    })
    void refusesWhatThePulsesCrack(PipeMaterial material, Place place, boolean fit) {
        Pulses pulses = Pulses.of(material, place, 60, 0.9);

        assertThat(pulses.fit()).isEqualTo(fit);
        assertThat(pulses.sentence())
                .startsWith(material.words())
                .contains(fit ? "may be used" : "must not be used")
                .contains("about 28 million pulses a year");
        assertThat(pulses.perYear()).isCloseTo(60 * 0.9 * 525_960, within(1.0));
    }

    private static DeadHead.Part part(String name, double bar) {
        return new DeadHead.Part(name, Pressure.ofBar(bar));
    }

    @Test
    void refusesBeatsThatCannotBe() {
        assertThatThrownBy(() -> Pulses.perYear(401, 1)).hasMessageContaining("beat rate");
        assertThatThrownBy(() -> Pulses.perYear(60, 1.1)).hasMessageContaining("running share");
        assertThatThrownBy(() -> Surge.returnTime(10, 0)).hasMessageContaining("wave speed");
    }
}
