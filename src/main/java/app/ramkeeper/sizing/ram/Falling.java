package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.quantity.NotConverged;
import java.util.function.DoubleUnaryOperator;

/** Where a falling function crosses zero. */
public final class Falling {

    private static final int MOST_STEPS = 200;

    private Falling() {}

    /**
     * The zero of a function that falls from low to high (Illinois form of regula falsi; Dowell, M. and Jarratt, P.
     * 1971, A modified regula falsi method, BIT 11, 168-174).
     *
     * <p>Gives the low end if the function is negative all through and the high end if it is positive all through.
     * Worked value: 2 for 4 - x2 between 0 and 5.
     *
     * @param sought what is sought, for the message
     * @param tolerance two tries as close as this end the search
     * @throws NotConverged if it is not found in 200 steps
     */
    public static double zero(String sought, DoubleUnaryOperator f, double low, double high, double tolerance) {
        double a = low;
        double fa = f.applyAsDouble(a);
        if (fa <= 0) {
            return a;
        }
        double b = high;
        double fb = f.applyAsDouble(b);
        if (fb >= 0) {
            return b;
        }
        int side = 0;
        double before = a;
        for (int i = 0; i < MOST_STEPS; i++) {
            double c = (a * fb - b * fa) / (fb - fa);
            double fc = f.applyAsDouble(c);
            if (fc == 0 || Math.abs(c - before) <= tolerance || b - a <= tolerance) {
                return c;
            }
            before = c;
            if (fc > 0) {
                a = c;
                fa = fc;
                fb = side == 1 ? fb / 2 : fb;
                side = 1;
            } else {
                b = c;
                fb = fc;
                fa = side == -1 ? fa / 2 : fa;
                side = -1;
            }
        }
        throw new NotConverged(sought, MOST_STEPS);
    }
}
