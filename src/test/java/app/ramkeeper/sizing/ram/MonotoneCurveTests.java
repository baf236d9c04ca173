package app.ramkeeper.sizing.ram;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.quantity.ImpossibleInput;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class MonotoneCurveTests {

    @Test
    void repeatsItsWorkedValue() {
        MonotoneCurve curve = MonotoneCurve.through(new double[] {0, 1, 2}, new double[] {0, 1, 1});

        assertThat(curve.at(0.5)).isCloseTo(0.6875, within(1e-12));
        assertThat(curve.at(1.5)).isCloseTo(1, within(1e-12));
    }

    @Test
    void isStraightThroughPointsOnALine() {
        MonotoneCurve curve = MonotoneCurve.through(new double[] {1, 2, 5, 6}, new double[] {10, 8, 2, 0});

        for (double x = 1; x <= 6; x += 0.125) {
            assertThat(curve.at(x)).isCloseTo(12 - 2 * x, within(1e-12));
        }
        assertThat(MonotoneCurve.through(new double[] {1, 3}, new double[] {5, 9})
                        .at(1.5))
                .isEqualTo(6);
    }

    /** Against the harmonic-mean slopes worked by hand: points (0,0) (1,1) (3,2), slope at 1 is 9/14. */
    @Test
    void usesTheWeightedHarmonicMeanOfTheSlopes() {
        MonotoneCurve curve = MonotoneCurve.through(new double[] {0, 1, 3}, new double[] {0, 1, 2});
        double step = 1e-6;

        double slope = (curve.at(1 + step) - curve.at(1 - step)) / (2 * step);

        assertThat(slope).isCloseTo(9 / (5 / 1.0 + 4 / 0.5), within(1e-5));
    }

    @Property
    void neverOvershootsAndRisesWhereItsPointsDo(
            @ForAll @Size(min = 3, max = 8) List<@DoubleRange(min = 0.1, max = 5) Double> steps,
            @ForAll @Size(min = 8, max = 8) List<@DoubleRange(min = 0, max = 5) Double> rises) {
        double[] x = new double[steps.size()];
        double[] y = new double[steps.size()];
        for (int i = 1; i < x.length; i++) {
            x[i] = x[i - 1] + steps.get(i);
            y[i] = y[i - 1] + rises.get(i);
        }
        MonotoneCurve curve = MonotoneCurve.through(x, y);
        double before = y[0];
        for (int i = 0; i <= 200; i++) {
            double value = curve.at(x[0] + (x[x.length - 1] - x[0]) * i / 200);
            assertThat(value).isBetween(before - 1e-9, y[y.length - 1] + 1e-9);
            before = value;
        }
    }

    @Test
    void keepsItsEndsOutside() {
        MonotoneCurve curve = MonotoneCurve.through(new double[] {1, 2, 3}, new double[] {4, 6, 9});

        assertThat(curve.at(0)).isEqualTo(4);
        assertThat(curve.at(9)).isEqualTo(9);
        assertThat(curve.covers(1)).isTrue();
        assertThat(curve.covers(3)).isTrue();
        assertThat(curve.covers(0.99)).isFalse();
        assertThat(curve.covers(3.01)).isFalse();
        assertThat(curve.low()).isEqualTo(1);
        assertThat(curve.high()).isEqualTo(3);
    }

    @Test
    void refusesPointsThatMakeNoCurve() {
        assertThatThrownBy(() -> MonotoneCurve.through(new double[] {1}, new double[] {1}))
                .isInstanceOf(ImpossibleInput.class)
                .hasMessageContaining("1 x and 1 y");
        assertThatThrownBy(() -> MonotoneCurve.through(new double[] {1, 2}, new double[] {1}))
                .hasMessageContaining("2 x and 1 y");
        assertThatThrownBy(() -> MonotoneCurve.through(new double[] {1, 1}, new double[] {1, 2}))
                .hasMessageContaining("x of point 2 is 1.0, allowed is more than 1.0");
        assertThatThrownBy(() -> MonotoneCurve.through(new double[] {1, 2}, new double[] {1, Double.NaN}))
                .hasMessageContaining("y of point 2 is NaN");
    }
}
