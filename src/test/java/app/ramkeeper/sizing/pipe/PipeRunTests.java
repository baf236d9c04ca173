package app.ramkeeper.sizing.pipe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.NotConverged;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Temperature;
import app.ramkeeper.sizing.water.Ambient;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PipeRunTests {

    private static final Ambient AMBIENT = Ambient.of(15, 0);
    private static final PipeRun RUN = new PipeRun(new Length(0.05), new Length(60), new Length(2e-6), 0);
    private static final Flow SIX = Flow.ofLitresPerSecond(6);

    @Test
    void givesTheDocumentedExample() {
        assertThat(RUN.velocity(SIX)).isCloseTo(3.056, within(0.0005));
        assertThat(RUN.reynolds(SIX, AMBIENT.water())).isCloseTo(134_000, within(500.0));
        assertThat(RUN.headLoss(SIX, AMBIENT).value().metres()).isCloseTo(9.82, within(0.01));
        assertThat(RUN.powerLost(SIX, AMBIENT).value().watts()).isCloseTo(577, within(1.0));
        assertThat(RUN.headLoss(SIX, AMBIENT).notes()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"0.00001", "0.001", "0.3", "9.82", "200"})
    void findsTheFlowAndTheBoreBack(double loss) {
        PipeRun run = new PipeRun(new Length(0.05), new Length(60), new Length(2e-6), 4);
        Flow flow = run.flowFor(new Head(loss), AMBIENT).value();

        assertThat(run.headLoss(flow, AMBIENT).value().metres()).isCloseTo(loss, within(1e-9 * loss));
        assertThat(PipeRun.boreFor(flow, new Head(loss), run.length(), run.roughness(), 4, AMBIENT)
                        .value()
                        .metres())
                .isCloseTo(0.05, within(1e-9));
        assertThat(run.flowFor(new Head(0), AMBIENT).value()).isEqualTo(Flow.NONE);
    }

    @Test
    void notesWhatLiesOutsideTheLaw() {
        // Re = 4 Q / (pi D nu): 0.15 l/s in 50 mm at 1.139e-6 m2/s is 3354
        assertThat(RUN.headLoss(Flow.ofLitresPerSecond(0.15), AMBIENT).notes())
                .extracting(Note::code)
                .containsExactly(Note.Code.TRANSITION);
        assertThat(RUN.headLoss(Flow.ofLitresPerSecond(0.08), AMBIENT).notes()).isEmpty();
        assertThat(new PipeRun(new Length(0.02), new Length(1), new Length(0.0015), 0)
                        .headLoss(SIX, AMBIENT)
                        .notes())
                .singleElement()
                .satisfies(note -> assertThat(note.sentence()).contains("relative roughness"));
        assertThat(new PipeRun(new Length(2), new Length(1), new Length(1e-4), 0)
                        .headLoss(new Flow(400), AMBIENT)
                        .notes())
                .singleElement()
                .satisfies(note -> assertThat(note.sentence()).contains("Reynolds number"));
        assertThat(PipeRun.boreFor(
                                Flow.ofLitresPerSecond(0.15), new Head(0.03), RUN.length(), RUN.roughness(), 0, AMBIENT)
                        .notes())
                .isNotEmpty();
    }

    @Test
    void refusesWhatCannotBe() {
        assertThatThrownBy(() -> new PipeRun(new Length(0.05), new Length(60), new Length(0.005), 0))
                .hasMessageContaining("roughness");
        assertThatThrownBy(() -> new PipeRun(new Length(0), new Length(60), new Length(0), 0))
                .hasMessageContaining("bore");
        assertThatThrownBy(() -> new PipeRun(new Length(0.05), new Length(60), new Length(0), -1))
                .hasMessageContaining("fittings");
        assertThatThrownBy(() -> RUN.flowFor(new Head(-1), AMBIENT)).hasMessageContaining("head loss");
        assertThatThrownBy(() ->
                        new PipeRun(new Length(0.05), new Length(0), new Length(0), 0).flowFor(new Head(1), AMBIENT))
                .hasMessageContaining("pipe length");
        Length length = new Length(10);
        Length smooth = new Length(0);
        assertThatThrownBy(() -> PipeRun.boreFor(Flow.NONE, new Head(1), length, smooth, 0, AMBIENT))
                .hasMessageContaining("flow");
        assertThatThrownBy(() -> PipeRun.boreFor(SIX, new Head(0), length, smooth, 0, AMBIENT))
                .hasMessageContaining("head loss");
        assertThatThrownBy(() -> PipeRun.boreFor(SIX, new Head(1), new Length(0), smooth, 0, AMBIENT))
                .hasMessageContaining("pipe length");
        assertThatThrownBy(() -> PipeRun.boreFor(SIX, new Head(1), length, smooth, -1, AMBIENT))
                .hasMessageContaining("fittings");
    }

    @Test
    void solvesPowerLawsFromAfar() {
        assertThat(PowerLawRoot.solve("x", x -> x * x, 9, 3, 2)).isEqualTo(3);
        assertThat(PowerLawRoot.solve("x", x -> x * x, 9, 1e-6, 1.7)).isCloseTo(3, within(1e-12));
        assertThat(PowerLawRoot.solve("x", x -> 1 / (x * x * x), 8, 1e4, -4)).isCloseTo(0.5, within(1e-12));
        assertThat(PowerLawRoot.solve("x", x -> x + x * x, 6, 50, 1.5)).isCloseTo(2, within(1e-12));
        assertThatThrownBy(() -> PowerLawRoot.solve("x", x -> 1, 9, 3, 2)).isInstanceOf(NotConverged.class);
        assertThatThrownBy(() -> PowerLawRoot.solve("x", x -> Double.NaN, 9, 3, 2))
                .isInstanceOf(NotConverged.class);
    }

    @ParameterizedTest(name = "{0} l/min: {1} mm, outside the table {2}")
    @CsvSource({
        "5.9, 30, true",
        "6, 30, false",
        "36, 30, false",
        "37, 40, false",
        "90, 50, false",
        "91, 80, false",
        "234, 80, false",
        "235, 100, false",
        "360, 100, false",
        "361, 100, true"
    })
    void readsTheDeliveryPipeTable(double flow, double bore, boolean outside) {
        var found = DeliveryBore.forFlow(Flow.ofLitresPerMinute(flow));

        assertThat(found.value().millimetres()).isCloseTo(bore, within(1e-9));
        assertThat(found.has(Note.Code.OUTSIDE_RANGE)).isEqualTo(outside);
    }

    @Test
    void choosesTheLeastClass() {
        Pressure most = Pressure.ofBar(9.2);

        assertThat(series(most, 20)).isEqualTo("SDR 17");
        assertThat(series(most, 35)).isEqualTo("SDR 13.6");
        assertThat(PipeCatalogue.leastClass(PipeCatalogue.pe100(), 63, Pressure.ofBar(26), Temperature.ofCelsius(20)))
                .isEmpty();
        assertThat(PipeCatalogue.leastClass(PipeCatalogue.pe100(), 64, most, Temperature.ofCelsius(20)))
                .isEmpty();
        assertThat(List.of(PipeMaterial.values()))
                .allSatisfy(material -> assertThat(PipeCatalogue.of(material)).allMatch(t -> t.material() == material));
    }

    @Test
    void refusesPipeWithoutABore() {
        assertThatThrownBy(() -> pipe(25, 16)).hasMessageContaining("less than half the outside diameter");
        assertThatThrownBy(() -> pipe(0, 16)).hasMessageContaining("pipe wall");
        assertThatThrownBy(() -> pipe(3, 0)).hasMessageContaining("pressure rating");
        assertThat(pipe(24.9, 16).bore().millimetres()).isCloseTo(0.2, within(1e-9));
        assertThat(pipe(3, 16).words()).isEqualTo("PE100 50 own");
    }

    private static PipeType pipe(double wall, double bar) {
        return new PipeType(
                "own",
                PipeMaterial.PE100,
                "own",
                50,
                Length.ofMillimetres(50),
                Length.ofMillimetres(wall),
                Pressure.ofBar(bar));
    }

    private static String series(Pressure most, double celsius) {
        return PipeCatalogue.leastClass(PipeCatalogue.pe100(), 63, most, Temperature.ofCelsius(celsius))
                .orElseThrow()
                .value()
                .series();
    }
}
