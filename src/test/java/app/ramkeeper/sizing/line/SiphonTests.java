package app.ramkeeper.sizing.line;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.sizing.pipe.PipeCatalogue;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.water.Ambient;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A line over a ridge at 60 m to a tank below it, at so little flow that friction is some centimetres. */
class SiphonTests {

    @ParameterizedTest(name = "tank {0} m below the ridge: {1}")
    @CsvSource({
        "3, only while it is tight and primed",
        "8, It will not stay primed",
        "14, the column parts",
    })
    void warnsByTheDepthOfTheSuction(double below, String words) {
        List<Note> notes = under(60 - below);

        assertThat(notes.get(0).code()).isEqualTo(Note.Code.CAUTION);
        assertThat(notes.get(0).sentence())
                .contains("At 200 m along, level 60.0 m")
                .contains("%.1f m of suction".formatted(below - 0.01).substring(0, 2))
                .contains(words);
    }

    @Test
    void warnsOfAnAirValveThatDrawsAir() {
        // the tank stands 1 m above the ridge: no siphon, but little head at the air valve there
        List<Note> low = under(61);

        assertThat(low)
                .singleElement()
                .satisfies(note -> assertThat(note.sentence())
                        .contains("The high point at 200 m has only 1.")
                        .contains("lets air in as well as out"));
        assertThat(under(63)).isEmpty();
        // below the ridge both are said
        assertThat(under(57)).hasSize(2);
    }

    private static List<Note> under(double tankM) {
        DeliveryLine line = new DeliveryLine(
                GroundProfile.of(0, 0, 200, 60, 400, 40),
                List.of(Stretch.of(
                        400,
                        PipeCatalogue.find(PipeCatalogue.pe100(), 63, "SDR 11").orElseThrow())),
                List.of(Outlet.tank(400, tankM)));
        return line.under(LineLoad.of(Flow.ofLitresPerMinute(1), Ambient.standard()))
                .notes();
    }

    @Test
    void measuresThePipeAlongTheSlope() {
        DeliveryLine line = new DeliveryLine(
                GroundProfile.of(0, 0, 40, 30, 80, 60),
                List.of(Stretch.of(
                        80,
                        PipeCatalogue.find(PipeCatalogue.pe100(), 63, "SDR 11").orElseThrow())),
                List.of(Outlet.tank(80, 60)));

        assertThat(line.pipeLengthM()).isEqualTo(100);
    }
}
