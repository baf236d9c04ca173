package app.ramkeeper.sizing.pipe;

import app.ramkeeper.sizing.quantity.NotConverged;
import java.util.function.DoubleUnaryOperator;

/**
 * Root of a monotone function that is nearly a power law, sought on logarithms of both sides.
 *
 * <p>Steps outwards from a guess until the root is between two points, then the Illinois form of false position (Dowell,
 * M. and Jarratt, P. 1971, BIT 11, 168-174), which keeps the bracket.
 */
final class PowerLawRoot {

    private static final int MAX_STEPS = 200;
    private static final double RELATIVE = 1e-13;

    private PowerLawRoot() {}

    /**
     * Solves f(x) = target for x above zero.
     *
     * @param exponent rough power of x in f, its sign tells rising from falling
     */
    static double solve(String sought, DoubleUnaryOperator f, double target, double guess, double exponent) {
        double lnTarget = Math.log(target);
        DoubleUnaryOperator miss = u -> Math.log(f.applyAsDouble(Math.exp(u))) - lnTarget;
        double a = Math.log(guess);
        double fa = miss.applyAsDouble(a);
        if (fa == 0) {
            return guess;
        }
        if (Double.isNaN(fa)) {
            throw new NotConverged(sought, 0);
        }
        double b = a;
        double fb = fa;
        int steps = 0;
        double stride = -fa / exponent * 1.1;
        while (fa * fb > 0) {
            a = b;
            fa = fb;
            b += stride;
            stride *= 2;
            fb = miss.applyAsDouble(b);
            if (++steps > MAX_STEPS || Double.isNaN(fb)) {
                throw new NotConverged(sought, steps);
            }
        }
        return Math.exp(illinois(sought, miss, a, fa, b, fb));
    }

    private static double illinois(String sought, DoubleUnaryOperator miss, double a, double fa, double b, double fb) {
        for (int step = 0; step < MAX_STEPS; step++) {
            double c = b - fb * (b - a) / (fb - fa);
            double fc = miss.applyAsDouble(c);
            if (Math.abs(fc) <= RELATIVE || Math.abs(b - a) <= RELATIVE) {
                return c;
            }
            if (fc * fb < 0) {
                a = b;
                fa = fb;
            } else {
                fa *= 0.5;
            }
            b = c;
            fb = fc;
        }
        throw new NotConverged(sought, MAX_STEPS);
    }
}
