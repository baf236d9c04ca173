package app.ramkeeper.sizing.pipe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FrictionTests {

    private static final double[] ROUGH = {0, 1e-7, 1e-6, 1e-5, 1e-4, 1e-3, 0.003, 0.01, 0.03, 0.05, 0.1};

    @Test
    void solvesColebrookOverTheWholeRange() {
        for (double re = 2000; re < 1e9; re *= 1.05) {
            for (double rough : ROUGH) {
                double root = 1 / Math.sqrt(Friction.colebrook(re, rough));

                assertThat(root).as("Re %s, k %s", re, rough).isCloseTo(iterated(re, rough), within(1e-10 * root));
            }
        }
    }

    /** The equation by plain repetition, which converges slowly but surely. */
    private static double iterated(double re, double rough) {
        double root = 7;
        for (int i = 0; i < 200; i++) {
            root = -2 * Math.log10(rough / 3.7 + 2.51 * root / re);
        }
        return root;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1e-4, 1e-3, 0.01, 0.05})
    void joinsLaminarAndTurbulentInValueAndSlope(double rough) {
        for (double join : new double[] {Friction.LAMINAR_BELOW, Friction.TURBULENT_FROM}) {
            double before = Friction.factor(join * (1 - 1e-7), rough);
            double after = Friction.factor(join, rough);
            assertThat(after).isCloseTo(before, within(1e-7));

            double step = 1e-3;
            double slopeBefore = (Friction.factor(join - step, rough) - Friction.factor(join - 2 * step, rough)) / step;
            double slopeAfter = (Friction.factor(join + 2 * step, rough) - Friction.factor(join + step, rough)) / step;
            assertThat(slopeAfter).isCloseTo(slopeBefore, within(1e-8));
        }
    }

    @Test
    void keepsTheSignOfTheFlow() {
        double forth = Friction.headLoss(0.001, 0.05, 100, 1e-5, 2, 1.3e-6, 9.81);
        double back = Friction.headLoss(-0.001, 0.05, 100, 1e-5, 2, 1.3e-6, 9.81);

        assertThat(forth).isPositive();
        assertThat(back).isEqualTo(-forth);
        assertThat(Friction.headLoss(0, 0.05, 100, 1e-5, 2, 1.3e-6, 9.81)).isZero();
    }

    @Test
    void addsFittingsToFriction() {
        double bare = Friction.headLoss(0.001, 0.05, 100, 1e-5, 0, 1.3e-6, 9.81);
        double fitted = Friction.headLoss(0.001, 0.05, 100, 1e-5, 10, 1.3e-6, 9.81);
        double v = Friction.velocity(0.001, 0.05);

        assertThat(fitted - bare).isCloseTo(Fitting.headLoss(10, v, 9.81), within(1e-12));
    }

    @Test
    void repeatsTheWorkedValues() {
        assertThat(Friction.factor(1000, 0.01)).isEqualTo(0.064);
        assertThat(Friction.velocity(0.006, 0.05)).isCloseTo(3.056, within(0.0005));
        assertThat(Friction.headLoss(0.006, 0.05, 60, 2e-6, 0, 1.138e-3 / 999, 9.81))
                .isCloseTo(9.817, within(0.005));
        assertThat(PublishedFriction.swameeJain(1e5, 1e-4)).isCloseTo(0.01845, within(0.00001));
    }

    @Test
    void ownTransitionIsNearThePublishedOne() {
        for (double re = 2000; re <= 4000; re += 100) {
            for (double rough : new double[] {0, 1e-3, 0.01}) {
                double published = PublishedFriction.dunlop(re, rough);
                assertThat(Friction.factor(re, rough)).isCloseTo(published, within(0.035 * published));
            }
        }
    }

    @Test
    void makesNoObjects() {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long id = Thread.currentThread().getId();
        double sum = work();
        long before = threads.getThreadAllocatedBytes(id);

        sum += work();

        long allocated = threads.getThreadAllocatedBytes(id) - before;
        assertThat(sum).isPositive();
        // the two readings of the bean cost a little themselves; a hundred thousand factors must not
        assertThat(allocated).isLessThan(10_000);
    }

    private static double work() {
        double sum = 0;
        for (int i = 1; i <= 100_000; i++) {
            sum += Friction.factor(10.0 * i, 1e-4) + Friction.headLoss(1e-8 * i, 0.05, 100, 1e-5, 1, 1.3e-6, 9.81);
        }
        return sum;
    }
}
