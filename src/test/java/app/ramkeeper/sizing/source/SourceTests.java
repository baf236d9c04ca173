package app.ramkeeper.sizing.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Uncertain;
import app.ramkeeper.sizing.quantity.Volume;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Measurements worked by hand: values, the uncertainty they carry, and what they warn of. */
class SourceTests {

    private static final double G = 9.80665;

    @Test
    void fillsABucket() {
        Readings runs = Readings.of(50, 47, 51, 48, 54);

        FlowMeasurement flow = BucketAndWatch.measure(Volume.ofLitres(37.85), 0.01, runs, 0.3);

        assertThat(runs.count()).isEqualTo(5);
        assertThat(runs.mean()).isEqualTo(50);
        // squares 0 + 9 + 1 + 4 + 16 = 30, by 4
        assertThat(runs.spread()).isCloseTo(Math.sqrt(7.5), within(1e-12));
        assertThat(runs.uncertaintyOfMean(0.3)).isCloseTo(Math.sqrt(1.5), within(1e-12));
        assertThat(flow.flow().litresPerSecond()).isCloseTo(0.757, within(1e-9));
        assertThat(flow.relativeUncertainty()).isCloseTo(Math.hypot(Math.sqrt(1.5) / 50, 0.01), within(1e-12));
        assertThat(flow.uncertainty().litresPerSecond()).isCloseTo(0.757 * flow.relativeUncertainty(), within(1e-9));
        assertThat(flow.notes()).isEmpty();
    }

    @Test
    void warnsOfPoorRuns() {
        assertThat(codes(BucketAndWatch.measure(Volume.ofLitres(10), 0, Readings.of(20), 0.3)))
                .containsExactly(Note.Code.ASSUMED);
        assertThat(BucketAndWatch.measure(Volume.ofLitres(10), 0, Readings.of(20), 0.3)
                        .relativeUncertainty())
                .isCloseTo(0.015, within(1e-12));
        assertThat(codes(BucketAndWatch.measure(Volume.ofLitres(10), 0, Readings.of(4.9, 4.9), 0.3)))
                .containsExactly(Note.Code.OUTSIDE_RANGE);
        // mean 20, spread 2.83: more than a tenth
        assertThat(codes(BucketAndWatch.measure(Volume.ofLitres(10), 0, Readings.of(18, 22), 0.3)))
                .containsExactly(Note.Code.CAUTION);
        assertThat(codes(BucketAndWatch.measure(Volume.ofLitres(10), 0, Readings.of(19.5, 20.5), 0.3)))
                .isEmpty();
        assertThat(Readings.of(19.9, 20.1).uncertaintyOfMean(0.3)).isCloseTo(0.3 / Math.sqrt(2), within(1e-12));
    }

    @ParameterizedTest(name = "head {0} m, bottom {1} m above the bed: {2} notes")
    @CsvSource({"0.06, 1, 0", "0.059, 1, 1", "0.38, 1, 0", "0.381, 1, 1", "0.1, 0.25, 0", "0.1, 0.249, 1", "0.4, 0.5, 2"
    })
    void boundsTheNotch(double head, double height, int notes) {
        assertThat(VNotch.rightAngled()
                        .measure(new Uncertain(head, 0.002), height, G)
                        .notes())
                .hasSize(notes);
    }

    @Test
    void interpolatesTheNotchsCoefficients() {
        assertThat(new VNotch(20).coefficient()).isEqualTo(0.592);
        assertThat(new VNotch(50).coefficient()).isCloseTo((0.582 + 0.577) / 2, within(1e-12));
        assertThat(new VNotch(95).headAddedM()).isCloseTo(0.000865, within(1e-12));
        FlowMeasurement flow = VNotch.rightAngled().measure(new Uncertain(0.1, 0.002), 0.5, G);
        assertThat(flow.relativeUncertainty()).isCloseTo(Math.hypot(0.02, 2.5 * 0.002 / 0.10085), within(1e-12));
    }

    @Test
    void measuresOverRectangularWeirs() {
        FlowMeasurement contracted = RectangularWeir.measureContracted(0.5, new Uncertain(0.1, 0.002));
        FlowMeasurement full = RectangularWeir.measureFullWidth(2, new Uncertain(0.3, 0.003), 0.4, G);

        assertThat(contracted.flow().litresPerSecond()).isCloseTo(27.93, within(0.01));
        // d ln Q / d ln h is 1.5 - 0.02 / (0.5 - 0.02) = 1.4583
        assertThat(contracted.relativeUncertainty()).isCloseTo(Math.hypot(0.03, 0.02 * 1.458333), within(1e-6));
        assertThat(full.flow().cubicMetresPerSecond()).isCloseTo(0.649, within(0.001));
        // 1.5 x 0.3/0.301 + 0.045 / 0.445
        assertThat(full.relativeUncertainty()).isCloseTo(Math.hypot(0.03, 0.01 * 1.596139), within(1e-6));
        assertThat(RectangularWeir.francis(0.5, 0.1, 0)).isCloseTo(1.84 * 0.5 * Math.pow(0.1, 1.5), within(1e-12));
        assertThat(RectangularWeir.francis(0.5, 0.1, 1)).isCloseTo(1.84 * 0.49 * Math.pow(0.1, 1.5), within(1e-12));
    }

    @Test
    void boundsTheWeirs() {
        assertThat(RectangularWeir.measureContracted(0.306, new Uncertain(0.101, 0.002))
                        .notes())
                .isEmpty();
        assertThat(codes(RectangularWeir.measureContracted(0.306, new Uncertain(0.103, 0.002))))
                .containsExactly(Note.Code.OUTSIDE_RANGE);
        assertThat(codes(RectangularWeir.measureContracted(0.3, new Uncertain(0.029, 0.002))))
                .containsExactly(Note.Code.OUTSIDE_RANGE);
        assertThat(RectangularWeir.measureFullWidth(2, new Uncertain(0.44, 0), 0.2, G)
                        .notes())
                .isEmpty();
        assertThat(codes(RectangularWeir.measureFullWidth(2, new Uncertain(0.45, 0), 0.2, G)))
                .containsExactly(Note.Code.OUTSIDE_RANGE);
        assertThatThrownBy(() -> RectangularWeir.francis(0.5, 1.1, 2)).hasMessageContaining("head over the weir");
        assertThat(RectangularWeir.francis(0.5, 1.1, 0)).isPositive();
    }

    @Test
    void notesALowCrest() {
        Uncertain head = new Uncertain(0.3, 0.002);
        FlowMeasurement high = RectangularWeir.measureFullWidth(2, head, 0.4, G);

        assertThat(high.flow().litresPerSecond()).isCloseTo(649, within(0.5));
        assertThat(high.relativeUncertainty()).isCloseTo(0.0319, within(0.0002));
        assertThat(high.notes()).isEmpty();
        assertThat(codes(RectangularWeir.measureFullWidth(2, head, 0.15, G))).isEmpty();
        assertThat(codes(RectangularWeir.measureFullWidth(2, head, 0.149, G))).containsExactly(Note.Code.OUTSIDE_RANGE);
        assertThat(codes(RectangularWeir.measureFullWidth(2, head, 0.1, G)))
                .containsExactly(Note.Code.OUTSIDE_RANGE, Note.Code.OUTSIDE_RANGE);
    }

    @Test
    void floatsDownAReach() {
        FlowMeasurement flow = FloatArea.measure(
                new Uncertain(10, 0.1), Readings.of(50, 50, 50), new Uncertain(0.3, 0.03), FloatArea.USUAL_FACTOR);

        assertThat(flow.flow().litresPerSecond()).isCloseTo(51, within(1e-9));
        double time = 0.3 / Math.sqrt(3) / 50;
        assertThat(flow.relativeUncertainty())
                .isCloseTo(Math.sqrt(0.01 * 0.01 + 0.1 * 0.1 + Math.pow(0.06 / 0.85, 2) + time * time), within(1e-12));
        assertThat(flow.notes()).isEmpty();
        assertThat(codes(FloatArea.measure(
                        Uncertain.exact(5), Readings.of(19, 20), Uncertain.exact(0.3), FloatArea.USUAL_FACTOR)))
                .containsExactly(Note.Code.CAUTION, Note.Code.OUTSIDE_RANGE);
        assertThat(codes(FloatArea.measure(
                        Uncertain.exact(5), Readings.of(20, 20, 20), Uncertain.exact(0.3), FloatArea.USUAL_FACTOR)))
                .isEmpty();
        assertThatThrownBy(() -> FloatArea.area(new double[] {0, 1}, new double[] {0}))
                .hasMessageContaining("soundings");
        assertThatThrownBy(() -> FloatArea.area(new double[] {0, 0}, new double[] {0, 1}))
                .hasMessageContaining("step between soundings");
        assertThatThrownBy(() -> FloatArea.area(new double[] {0, 1}, new double[] {0, -1}))
                .hasMessageContaining("depth");
    }

    @Test
    void leavesWhatTheDrySeasonLeaves() {
        FlowMeasurement measured = new FlowMeasurement("bucket", Uncertain.relative(1e-3, 0.05), List.of());

        FlowMeasurement dry = new DrySeason(new Uncertain(0.5, 0.1), Flow.ofLitresPerMinute(10)).usable(measured);

        assertThat(dry.flow().litresPerMinute()).isCloseTo(20, within(1e-9));
        assertThat(dry.uncertainty().litresPerMinute()).isCloseTo(Math.hypot(1.5, 6), within(1e-9));
        assertThat(dry.notes())
                .singleElement()
                .satisfies(note -> assertThat(note.sentence()).contains("50 % of the day's"));
        assertThat(DrySeason.measuredDry().usable(measured).notes()).isEmpty();
        assertThat(DrySeason.measuredDry().usable(measured).flow()).isEqualTo(measured.flow());
        FlowMeasurement none = new DrySeason(Uncertain.exact(1), Flow.ofLitresPerMinute(60)).usable(measured);
        assertThat(none.flow()).isEqualTo(Flow.NONE);
        assertThat(codes(none)).containsExactly(Note.Code.CAUTION);
        assertThatThrownBy(() -> new DrySeason(Uncertain.exact(1.1), Flow.NONE))
                .hasMessageContaining("dry-season share");
    }

    @Test
    void refusesReadingsThatCannotBe() {
        assertThatThrownBy(() -> Readings.of()).hasMessageContaining("at least one");
        assertThatThrownBy(() -> Readings.of(10, 0)).hasMessageContaining("reading");
        assertThatThrownBy(() -> Readings.of(10, Double.NaN)).hasMessageContaining("reading");
        assertThatThrownBy(() -> new VNotch(101)).hasMessageContaining("notch angle");
    }

    private static List<Note.Code> codes(FlowMeasurement flow) {
        return flow.notes().stream().map(Note::code).toList();
    }
}
