package app.ramkeeper.sizing.pipe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.water.Ambient;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

class FrictionPropertyTests {

    @Property
    void moreFlowLosesMore(
            @ForAll @Scale(8) @DoubleRange(min = 1e-6, max = 0.01) double flow,
            @ForAll @Scale(8) @DoubleRange(min = 1.0001, max = 3) double more,
            @ForAll @Scale(8) @DoubleRange(min = 0.01, max = 0.2) double bore,
            @ForAll @Scale(8) @DoubleRange(min = 0, max = 0.0004) double rough) {
        assertThat(loss(flow * more, bore, rough)).isGreaterThan(loss(flow, bore, rough));
    }

    @Property
    void widerPipeLosesLess(
            @ForAll @Scale(8) @DoubleRange(min = 1e-6, max = 0.01) double flow,
            @ForAll @Scale(8) @DoubleRange(min = 1.0001, max = 3) double wider,
            @ForAll @Scale(8) @DoubleRange(min = 0.01, max = 0.2) double bore,
            @ForAll @Scale(8) @DoubleRange(min = 0, max = 0.0004) double rough) {
        assertThat(loss(flow, bore * wider, rough)).isLessThan(loss(flow, bore, rough));
    }

    @Property
    void rougherPipeNeverLosesLess(
            @ForAll @Scale(8) @DoubleRange(min = 1e-6, max = 0.01) double flow,
            @ForAll @Scale(8) @DoubleRange(min = 0.01, max = 0.2) double bore,
            @ForAll @Scale(8) @DoubleRange(min = 0, max = 0.0002) double rough) {
        assertThat(loss(flow, bore, rough * 2)).isGreaterThanOrEqualTo(loss(flow, bore, rough) * (1 - 1e-12));
    }

    /** Reynolds' law of similarity: the same Re and relative roughness have the same factor at any scale. */
    @Property
    void scalesWithReynoldsNumber(
            @ForAll @Scale(8) @DoubleRange(min = 1e-5, max = 0.005) double flow,
            @ForAll @Scale(8) @DoubleRange(min = 0.02, max = 0.1) double bore,
            @ForAll @Scale(8) @DoubleRange(min = 1.1, max = 5) double scale) {
        double rough = 1e-3 * bore;
        double small = loss(flow, bore, rough);
        double large = Friction.headLoss(
                flow * scale, bore * scale, 100 * scale, rough * scale, 0, 1.3e-6, 9.81 / Math.pow(scale, 3));

        assertThat(large).isCloseTo(small * scale, within(1e-9 * small * scale));
    }

    @Property
    void flowForALossIsTheInverse(
            @ForAll @Scale(8) @DoubleRange(min = 1e-6, max = 0.02) double flow,
            @ForAll @Scale(8) @DoubleRange(min = 0.01, max = 0.2) double bore,
            @ForAll @Scale(8) @DoubleRange(min = 0, max = 0.0004) double rough,
            @ForAll @Scale(8) @DoubleRange(min = 0, max = 50) double fittings) {
        PipeRun run = new PipeRun(new Length(bore), new Length(100), new Length(rough), fittings);
        Head lost = run.headLoss(new Flow(flow), Ambient.standard()).value();

        double found = run.flowFor(lost, Ambient.standard()).value().cubicMetresPerSecond();

        assertThat(found).isCloseTo(flow, within(1e-9 * flow));
    }

    @Property
    void boreForALossIsTheInverse(
            @ForAll @Scale(8) @DoubleRange(min = 1e-5, max = 0.02) double flow,
            @ForAll @Scale(8) @DoubleRange(min = 0.02, max = 0.2) double bore,
            @ForAll @Scale(8) @DoubleRange(min = 0, max = 0.0004) double rough,
            @ForAll @Scale(8) @DoubleRange(min = 0, max = 50) double fittings) {
        PipeRun run = new PipeRun(new Length(bore), new Length(100), new Length(rough), fittings);
        Head lost = run.headLoss(new Flow(flow), Ambient.standard()).value();

        Length found = PipeRun.boreFor(
                        new Flow(flow), lost, new Length(100), new Length(rough), fittings, Ambient.standard())
                .value();

        assertThat(found.metres()).isCloseTo(bore, within(1e-9 * bore));
    }

    private static double loss(double flow, double bore, double rough) {
        return Friction.headLoss(flow, bore, 100, rough, 0, 1.3e-6, 9.81);
    }
}
