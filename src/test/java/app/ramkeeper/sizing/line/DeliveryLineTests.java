package app.ramkeeper.sizing.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.pipe.Friction;
import app.ramkeeper.sizing.pipe.PipeCatalogue;
import app.ramkeeper.sizing.pipe.PipeType;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.water.Ambient;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class DeliveryLineTests {

    private static final Ambient AMBIENT = Ambient.standard();

    private final PipeType pipe =
            PipeCatalogue.find(PipeCatalogue.pe100(), 40, "SDR 11").orElseThrow();
    private final DeliveryLine line = new DeliveryLine(
            GroundProfile.of(0, 0, 200, 60, 400, 50), List.of(Stretch.of(400, pipe)), List.of(Outlet.tank(400, 50)));

    @Test
    void countsTheLiftToTheRidge() {
        LineResult result = line.under(LineLoad.of(Flow.ofLitresPerMinute(10), AMBIENT));

        double q = 10 / 60_000.0;
        double climb = Friction.headLoss(
                q, 0.0326, Math.hypot(200, 60), 1e-5, 0, AMBIENT.water().kinematicViscosity(), AMBIENT.gravity());
        assertThat(result.lift().metres()).isEqualTo(60);
        assertThat(result.headAtPump().metres()).isCloseTo(60 + climb, within(1e-9));
        assertThat(line.headAtPumpM(q, AMBIENT)).isCloseTo(result.headAtPump().metres(), within(1e-9));
        assertThat(result.airValves()).containsExactly(new GroundPoint(200, 60));
        assertThat(result.drains()).containsExactly(new GroundPoint(0, 0));
    }

    @Test
    void warnsOfTheSiphonOverTheRidge() {
        LineResult result = line.under(LineLoad.of(Flow.ofLitresPerMinute(1), AMBIENT));

        assertThat(result.notes())
                .anyMatch(note ->
                        note.code() == Note.Code.CAUTION && note.sentence().contains("suction"));
        assertThat(result.points().get(1).fullPipeHeadM()).isBetween(-10.0, -9.0);
        assertThat(result.points().get(1).runningHeadM()).isZero();
    }

    @Test
    void givesEachOutletItsShare() {
        Outlet trough = new Outlet("trough", 200, 20, 0.25, 0, Optional.empty());
        Outlet tank = new Outlet("tank", 400, 50, 0.75, 0, Optional.empty());
        DeliveryLine shared = new DeliveryLine(
                GroundProfile.of(0, 0, 200, 20, 400, 50), List.of(Stretch.of(400, pipe)), List.of(trough, tank));

        LineResult result = shared.under(LineLoad.of(Flow.ofLitresPerMinute(8), AMBIENT));

        assertThat(result.outlets().get(0).flow().litresPerMinute()).isCloseTo(2, within(1e-9));
        assertThat(result.outlets().get(0).surplusM()).isGreaterThan(30);
        assertThat(result.outlets().get(1).surplusM()).isCloseTo(0, within(1e-9));
    }

    @Test
    void refusesSharesThatDoNotAddUp() {
        Outlet half = new Outlet("tank", 400, 50, 0.5, 0, Optional.empty());

        assertThatThrownBy(() -> new DeliveryLine(line.ground(), line.stretches(), List.of(half)))
                .hasMessageContaining("sum of the outlets' shares");
    }
}
