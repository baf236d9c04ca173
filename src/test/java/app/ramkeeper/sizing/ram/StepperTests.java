package app.ramkeeper.sizing.ram;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.quantity.NotConverged;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;

class StepperTests {

    private static final Stepper.Watcher NOBODY = (time, state) -> {};

    @Test
    void stopsWhereAFallingStoneHitsTheGround() {
        Stepper stepper = new Stepper(1e-10, new double[] {1e-12, 1e-12});
        double[] state = {20, 0};

        boolean hit = stepper.run(state, Stone::rates, s -> -s[0], 1e-3, 10, NOBODY);

        assertThat(hit).isTrue();
        assertThat(stepper.time()).isCloseTo(Math.sqrt(40 / 9.81), within(1e-9));
        assertThat(state[1]).isCloseTo(-Math.sqrt(2 * 9.81 * 20), within(1e-8));
        assertThat(state[0]).isCloseTo(0, within(1e-9));
    }

    @Test
    void agreesWithAnotherIntegrator() {
        double[] state = {1, 0};
        Stepper stepper = new Stepper(1e-9, new double[] {1e-10, 1e-10});

        boolean stopped = stepper.run(state, StepperTests::pendulum, s -> -1, 1e-3, 7, NOBODY);

        double[] other = new DormandPrince853Integrator(1e-6, 1, 1e-12, 1e-12)
                .integrate(
                        new OrdinaryDifferentialEquation() {
                            @Override
                            public int getDimension() {
                                return 2;
                            }

                            @Override
                            public double[] computeDerivatives(double t, double[] y) {
                                double[] rate = new double[2];
                                pendulum(y, rate);
                                return rate;
                            }
                        },
                        new ODEState(0, new double[] {1, 0}),
                        7)
                .getPrimaryState();
        assertThat(stopped).isFalse();
        assertThat(stepper.time()).isCloseTo(7, within(1e-12));
        assertThat(state[0]).isCloseTo(other[0], within(1e-7));
        assertThat(state[1]).isCloseTo(other[1], within(1e-7));
    }

    @Test
    void doesNotMoveWhenItStandsOnTheStop() {
        double[] state = {0, -3};
        Stepper stepper = new Stepper(1e-9, new double[] {1e-10, 1e-10});

        assertThat(stepper.run(state, Stone::rates, s -> -s[0], 1e-3, 7, NOBODY))
                .isTrue();

        assertThat(stepper.time()).isZero();
        assertThat(state).containsExactly(0, -3);
    }

    @Test
    void countsTimeOnAndFromTheStartAgain() {
        double[] state = {100, 0};
        Stepper stepper = new Stepper(1e-9, new double[] {1e-10, 1e-10});
        stepper.run(state, Stone::rates, s -> -1, 1e-3, 0.5, NOBODY);
        stepper.run(state, Stone::rates, s -> -1, 1e-3, 0.25, NOBODY);

        assertThat(stepper.time()).isCloseTo(0.75, within(1e-12));
        assertThat(state[1]).isCloseTo(-9.81 * 0.75, within(1e-9));
        stepper.restart();
        assertThat(stepper.time()).isZero();
    }

    @Test
    void givesUpByNameWhenTheRatesAreNonsense() {
        Stepper stepper = new Stepper(1e-9, new double[] {1e-10});

        assertThatThrownBy(() ->
                        stepper.run(new double[] {1}, (y, rate) -> rate[0] = Double.NaN, s -> -1, 1e-3, 1, NOBODY))
                .isInstanceOf(NotConverged.class)
                .hasMessageContaining("phase of the beat");
    }

    private static void pendulum(double[] y, double[] rate) {
        rate[0] = y[1];
        rate[1] = -Math.sin(y[0]) - 0.1 * y[1];
    }

    private static final class Stone {
        static void rates(double[] y, double[] rate) {
            rate[0] = y[1];
            rate[1] = -9.81;
        }
    }
}
