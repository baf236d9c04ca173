package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.quantity.NotConverged;

/**
 * Steps an ordinary differential equation through time with its own choice of step, and stops where asked.
 *
 * <p>Dormand and Prince's pair of orders 5 and 4 (Dormand, J. R. and Prince, P. J. 1980, A family of embedded
 * Runge-Kutta formulae, J. Comp. Appl. Math. 6, 19-26). Our own because the beat needs a few dozen small steps and no
 * objects; a test holds it against Hipparchus.
 */
final class Stepper {

    /** Right-hand side: fills the derivative of the state. */
    interface Rates {
        void at(double[] state, double[] rate);
    }

    /** Stops the run where it turns from negative to zero or more. */
    interface Stop {
        double of(double[] state);
    }

    /** Sees each step taken. */
    interface Watcher {
        void step(double time, double[] state);
    }

    private static final int MOST_STEPS = 20_000;
    private static final int MOST_TRIMS = 60;

    private final int size;
    private final double relative;
    private final double[] floor;
    private final double[][] k;
    private final double[] trial;
    private final double[] next;
    private double time;

    /**
     * For states of one size.
     *
     * @param relative error allowed per step as a share of each value
     * @param floor error allowed per step for each value however small it is
     */
    Stepper(double relative, double[] floor) {
        this.size = floor.length;
        this.relative = relative;
        this.floor = floor;
        this.k = new double[7][size];
        this.trial = new double[size];
        this.next = new double[size];
    }

    double time() {
        return time;
    }

    void restart() {
        time = 0;
    }

    /**
     * Runs on from a state until the stop; the state is changed in place.
     *
     * @param horizon the longest time to run, s
     * @return whether the stop was reached before the horizon
     * @throws NotConverged if too many steps are needed
     */
    boolean run(double[] state, Rates rates, Stop stop, double firstStep, double horizon, Watcher watcher) {
        double end = time + horizon;
        double h = Math.min(firstStep, horizon);
        if (stop.of(state) >= 0) {
            return true;
        }
        rates.at(state, k[0]);
        for (int i = 0; i < MOST_STEPS; i++) {
            double error = attempt(state, rates, h);
            if (!(error <= 1)) {
                h *= error > 1 ? Math.max(0.2, 0.9 * Math.pow(error, -0.2)) : 0.2;
                continue;
            }
            if (stop.of(next) >= 0) {
                h = trim(state, rates, stop, h);
                accept(state, h, watcher);
                return true;
            }
            accept(state, h, watcher);
            if (time >= end) {
                return false;
            }
            System.arraycopy(k[6], 0, k[0], 0, size);
            h = Math.min(end - time, h * Math.min(5, 0.9 * Math.pow(Math.max(error, 1e-9), -0.2)));
        }
        throw new NotConverged("end of a phase of the beat", MOST_STEPS);
    }

    private void accept(double[] state, double h, Watcher watcher) {
        System.arraycopy(next, 0, state, 0, size);
        time += h;
        watcher.step(time, state);
    }

    /** Shortens the step until it ends on the stop (regula falsi, the Illinois way). */
    private double trim(double[] state, Rates rates, Stop stop, double step) {
        double low = 0;
        double high = step;
        double atLow = stop.of(state);
        double atHigh = stop.of(next);
        double scale = Math.max(Math.abs(atLow), Math.abs(atHigh));
        int side = 0;
        double h = step;
        for (int i = 0; i < MOST_TRIMS && high - low > 1e-13 * step; i++) {
            h = (low * atHigh - high * atLow) / (atHigh - atLow);
            attempt(state, rates, h);
            double at = stop.of(next);
            if (Math.abs(at) <= 1e-13 * scale) {
                return h;
            }
            if (at < 0) {
                low = h;
                atLow = at;
                if (side == -1) {
                    atHigh /= 2;
                }
                side = -1;
            } else {
                high = h;
                atHigh = at;
                if (side == 1) {
                    atLow /= 2;
                }
                side = 1;
            }
        }
        return h;
    }

    /** Takes one step into {@code next} and gives its error as a share of what is allowed. */
    private double attempt(double[] y, Rates rates, double h) {
        double[] k0 = k[0];
        double[] k1 = k[1];
        double[] k2 = k[2];
        double[] k3 = k[3];
        double[] k4 = k[4];
        double[] k5 = k[5];
        for (int i = 0; i < size; i++) {
            trial[i] = y[i] + h * (k0[i] / 5);
        }
        rates.at(trial, k1);
        for (int i = 0; i < size; i++) {
            trial[i] = y[i] + h * (3. / 40 * k0[i] + 9. / 40 * k1[i]);
        }
        rates.at(trial, k2);
        for (int i = 0; i < size; i++) {
            trial[i] = y[i] + h * (44. / 45 * k0[i] - 56. / 15 * k1[i] + 32. / 9 * k2[i]);
        }
        rates.at(trial, k3);
        for (int i = 0; i < size; i++) {
            trial[i] = y[i]
                    + h * (19372. / 6561 * k0[i] - 25360. / 2187 * k1[i] + 64448. / 6561 * k2[i] - 212. / 729 * k3[i]);
        }
        rates.at(trial, k4);
        for (int i = 0; i < size; i++) {
            trial[i] = y[i]
                    + h
                            * (9017. / 3168 * k0[i]
                                    - 355. / 33 * k1[i]
                                    + 46732. / 5247 * k2[i]
                                    + 49. / 176 * k3[i]
                                    - 5103. / 18656 * k4[i]);
        }
        rates.at(trial, k5);
        for (int i = 0; i < size; i++) {
            next[i] = y[i]
                    + h
                            * (35. / 384 * k0[i]
                                    + 500. / 1113 * k2[i]
                                    + 125. / 192 * k3[i]
                                    - 2187. / 6784 * k4[i]
                                    + 11. / 84 * k5[i]);
        }
        rates.at(next, k[6]);
        return error(y, h);
    }

    private double error(double[] y, double h) {
        double worst = 0;
        for (int i = 0; i < size; i++) {
            double e = h
                    * (71. / 57600 * k[0][i]
                            - 71. / 16695 * k[2][i]
                            + 71. / 1920 * k[3][i]
                            - 17253. / 339200 * k[4][i]
                            + 22. / 525 * k[5][i]
                            - 1. / 40 * k[6][i]);
            double allowed = floor[i] + relative * Math.max(Math.abs(y[i]), Math.abs(next[i]));
            worst = Math.max(worst, Math.abs(e) / allowed);
        }
        return worst;
    }
}
