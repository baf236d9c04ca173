package app.ramkeeper.sizing.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuantityTests {

    @Test
    void convertsFlow() {
        Flow flow = Flow.ofLitresPerMinute(60);

        assertThat(flow.cubicMetresPerSecond()).isCloseTo(0.001, within(1e-15));
        assertThat(flow.litresPerSecond()).isCloseTo(1, within(1e-12));
        assertThat(flow.litresPerMinute()).isCloseTo(60, within(1e-12));
        assertThat(flow.litresPerDay()).isCloseTo(86_400, within(1e-9));
        assertThat(flow.cubicMetresPerHour()).isCloseTo(3.6, within(1e-12));
        assertThat(Flow.ofLitresPerSecond(1).litresPerMinute()).isCloseTo(60, within(1e-12));
        assertThat(Flow.ofLitresPerDay(86_400).litresPerSecond()).isCloseTo(1, within(1e-12));
        assertThat(Flow.ofCubicMetresPerHour(3.6).litresPerSecond()).isCloseTo(1, within(1e-12));
    }

    @Test
    void addsAndTakesFlow() {
        Flow two = Flow.ofLitresPerSecond(2);
        Flow three = Flow.ofLitresPerSecond(3);

        assertThat(two.plus(three).litresPerSecond()).isCloseTo(5, within(1e-12));
        assertThat(three.less(two).litresPerSecond()).isCloseTo(1, within(1e-12));
        assertThat(two.less(three)).isEqualTo(Flow.NONE);
        assertThat(two.times(1.5).litresPerSecond()).isCloseTo(3, within(1e-12));
        assertThat(two).isLessThan(three);
    }

    @Test
    void convertsTheOthers() {
        assertThat(Pressure.ofBar(1).pascals()).isEqualTo(100_000);
        assertThat(Pressure.ofKilopascals(100).bar()).isCloseTo(1, within(1e-12));
        assertThat(Pressure.ofBar(1).kilopascals()).isCloseTo(100, within(1e-12));
        assertThat(Length.ofMillimetres(50).metres()).isCloseTo(0.05, within(1e-15));
        assertThat(Length.ofMetres(0.05).millimetres()).isCloseTo(50, within(1e-12));
        assertThat(Volume.ofLitres(250).cubicMetres()).isCloseTo(0.25, within(1e-15));
        assertThat(Volume.ofCubicMetres(0.25).litres()).isCloseTo(250, within(1e-12));
        assertThat(Temperature.ofCelsius(10).kelvin()).isCloseTo(283.15, within(1e-12));
    }

    @Test
    void calculatesWithTheOthers() {
        assertThat(Pressure.ofBar(3).plus(Pressure.ofBar(2)).bar()).isCloseTo(5, within(1e-12));
        assertThat(Pressure.ofBar(3).minus(Pressure.ofBar(5)).bar()).isCloseTo(-2, within(1e-12));
        assertThat(Pressure.ofBar(3).times(2).bar()).isCloseTo(6, within(1e-12));
        assertThat(new Head(3).plus(new Head(2))).isEqualTo(new Head(5));
        assertThat(new Head(3).minus(new Head(5))).isEqualTo(Head.ofMetres(-2));
        assertThat(new Head(10).pressure(1000, 9.80665).pascals()).isCloseTo(98_066.5, within(1e-9));
        assertThat(Volume.ofLitres(1).plus(Volume.ofLitres(2)).litres()).isCloseTo(3, within(1e-12));
        assertThat(Volume.ofLitres(2).times(2).litres()).isCloseTo(4, within(1e-12));
        assertThat(List.of(new Head(2), new Head(1))).isNotEqualTo(List.of()).hasSize(2);
        assertThat(new Head(1)).isLessThan(new Head(2));
        assertThat(new Length(1)).isLessThan(new Length(2));
        assertThat(new Volume(1)).isLessThan(new Volume(2));
        assertThat(new Pressure(1)).isLessThan(new Pressure(2));
    }

    @Test
    void carriesUncertainty() {
        Uncertain three = new Uncertain(3, 0.3);
        Uncertain four = Uncertain.relative(4, 0.1);

        assertThat(four).isEqualTo(new Uncertain(4, 0.4));
        assertThat(four.relativeUncertainty()).isCloseTo(0.1, within(1e-12));
        assertThat(three.plus(four).value()).isEqualTo(7);
        assertThat(three.plus(four).standardUncertainty()).isCloseTo(0.5, within(1e-12));
        assertThat(four.minus(three).value()).isEqualTo(1);
        assertThat(four.minus(three).standardUncertainty()).isCloseTo(0.5, within(1e-12));
        assertThat(three.times(four).value()).isEqualTo(12);
        assertThat(three.times(four).standardUncertainty()).isCloseTo(1.697, within(0.0005));
        assertThat(four.times(-2)).isEqualTo(new Uncertain(-8, 0.8));
        assertThat(Uncertain.exact(0).relativeUncertainty()).isZero();
        assertThat(new Uncertain(0, 1).relativeUncertainty()).isInfinite();
    }

    @Test
    void callsTheLastTenthClose() {
        assertThat(List.of(
                        Check.atMost("x", 9, 10, "m").verdict(),
                        Check.atMost("x", 9.5, 10, "m").verdict(),
                        Check.atMost("x", 10, 10, "m").verdict(),
                        Check.atMost("x", 11, 10, "m").verdict()))
                .containsExactly(Verdict.HOLDS, Verdict.CLOSE, Verdict.CLOSE, Verdict.FAILS);
        assertThat(List.of(
                        Check.atLeast("x", 11, 10, "m").verdict(),
                        Check.atLeast("x", 10.5, 10, "m").verdict(),
                        Check.atLeast("x", 10, 10, "m").verdict(),
                        Check.atLeast("x", 9, 10, "m").verdict()))
                .containsExactly(Verdict.HOLDS, Verdict.CLOSE, Verdict.CLOSE, Verdict.FAILS);
        assertThat(Check.atMost("x", Double.NaN, 10, "m").verdict()).isEqualTo(Verdict.FAILS);
        assertThat(Check.between("x", 3, 2, 10, "m").limit()).isEqualTo(2);
        assertThat(Check.between("x", 9.5, 2, 10, "m").limit()).isEqualTo(10);
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1})
    void refusesTheImpossible(double value) {
        assertThatThrownBy(() -> new Flow(value)).isInstanceOf(ImpossibleInput.class);
        assertThatThrownBy(() -> Flow.ofLitresPerMinute(value)).isInstanceOf(ImpossibleInput.class);
        assertThatThrownBy(() -> Flow.ofLitresPerSecond(value)).isInstanceOf(ImpossibleInput.class);
        assertThatThrownBy(() -> Flow.ofLitresPerDay(value)).isInstanceOf(ImpossibleInput.class);
        assertThatThrownBy(() -> Flow.ofCubicMetresPerHour(value)).isInstanceOf(ImpossibleInput.class);
        assertThatThrownBy(() -> Flow.NONE.times(value)).isInstanceOf(ImpossibleInput.class);
        assertThatThrownBy(() -> new Length(value)).isInstanceOf(ImpossibleInput.class);
        assertThatThrownBy(() -> Length.ofMillimetres(value)).isInstanceOf(ImpossibleInput.class);
        assertThatThrownBy(() -> new Volume(value)).isInstanceOf(ImpossibleInput.class);
        assertThatThrownBy(() -> Volume.ofLitres(value)).isInstanceOf(ImpossibleInput.class);
        assertThatThrownBy(() -> new Volume(1).times(value)).isInstanceOf(ImpossibleInput.class);
        assertThatThrownBy(() -> new Power(value)).isInstanceOf(ImpossibleInput.class);
        assertThatThrownBy(() -> new Uncertain(1, value)).isInstanceOf(ImpossibleInput.class);
        assertThatThrownBy(() -> Uncertain.relative(1, value)).isInstanceOf(ImpossibleInput.class);
    }

    static List<ThrowingCallable> notNumbers() {
        return List.of(
                () -> new Head(Double.NaN),
                () -> new Pressure(Double.NaN),
                () -> Pressure.ofBar(Double.POSITIVE_INFINITY),
                () -> Pressure.ofKilopascals(Double.NaN),
                () -> new Temperature(Double.NaN),
                () -> new Temperature(Double.POSITIVE_INFINITY),
                () -> new Temperature(-273.15),
                () -> new Uncertain(Double.NaN, 1),
                () -> new Note(Note.Code.CAUTION, "  "));
    }

    @ParameterizedTest
    @MethodSource("notNumbers")
    void refusesWhatIsNoValue(ThrowingCallable making) {
        assertThatThrownBy(making).isInstanceOf(ImpossibleInput.class);
    }

    @Test
    void namesArgumentValueAndWhatIsAllowed() {
        assertThatThrownBy(() -> new Flow(-2))
                .hasMessage("flow is -2.0, allowed is 0 m3/s or more")
                .asInstanceOf(InstanceOfAssertFactories.type(ImpossibleInput.class))
                .satisfies(refused -> {
                    assertThat(refused.argument()).isEqualTo("flow");
                    assertThat(refused.given()).isEqualTo("-2.0");
                    assertThat(refused.allowed()).isEqualTo("0 m3/s or more");
                });
    }

    @Test
    void guardsRanges() {
        assertThat(Require.within("x", 2.0, 2, 3, "m")).isEqualTo(2);
        assertThat(Require.within("x", 3.0, 2, 3, "m")).isEqualTo(3);
        assertThat(Require.within("n", 3, 2, 3, "")).isEqualTo(3);
        assertThat(Require.finite("x", -5, "m")).isEqualTo(-5);
        assertThatThrownBy(() -> Require.within("x", 1.99, 2, 3, "m")).hasMessageContaining("2.0 to 3.0 m");
        assertThatThrownBy(() -> Require.within("x", Double.NaN, 2, 3, "m")).isInstanceOf(ImpossibleInput.class);
        assertThatThrownBy(() -> Require.within("n", 1, 2, 3, "")).isInstanceOf(ImpossibleInput.class);
        assertThatThrownBy(() -> Require.within("n", 4, 2, 3, "")).isInstanceOf(ImpossibleInput.class);
        assertThatThrownBy(() -> Require.positive("x", 0, "m")).hasMessageContaining("more than 0 m");
        assertThatThrownBy(() -> Require.positive("x", Double.POSITIVE_INFINITY, "m"))
                .isInstanceOf(ImpossibleInput.class);
        assertThat(Require.positive("x", 1, "m")).isEqualTo(1);
        assertThat(Require.notNegative("x", 0, "m")).isZero();
    }
}
