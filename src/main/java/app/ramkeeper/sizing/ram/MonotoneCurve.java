package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Require;

/**
 * A smooth curve through points that never overshoots them and rises or falls only where they do.
 *
 * <p>Piecewise cubic Hermite with the weighted harmonic mean of the neighbouring slopes. Source: Fritsch, F. N. and
 * Butland, J. 1984, A method for constructing local monotone piecewise cubic interpolants, SIAM J. Sci. Stat. Comput. 5,
 * 300-304. Outside its points the curve keeps its end value; ask {@link #covers} and say so. Worked value: through (0,
 * 0), (1, 1), (2, 1) the curve is 0.6875 at 0.5 and 1 at 1.5.
 */
public final class MonotoneCurve {

    private final double[] x;
    private final double[] y;
    private final double[] slope;

    private MonotoneCurve(double[] x, double[] y) {
        this.x = x;
        this.y = y;
        this.slope = slopes(x, y);
    }

    /**
     * Through points whose x rise.
     *
     * @param x two or more, each more than the one before
     * @param y as many, finite
     * @throws ImpossibleInput if the counts differ, x does not rise or a number is not finite
     */
    public static MonotoneCurve through(double[] x, double[] y) {
        if (x.length < 2 || x.length != y.length) {
            throw new ImpossibleInput("points", x.length + " x and " + y.length + " y", "two or more of each");
        }
        for (int i = 0; i < x.length; i++) {
            Require.finite("x of point " + (i + 1), x[i], "its unit");
            Require.finite("y of point " + (i + 1), y[i], "its unit");
            if (i > 0 && !(x[i] > x[i - 1])) {
                throw new ImpossibleInput("x of point " + (i + 1), x[i], "more than " + x[i - 1]);
            }
        }
        return new MonotoneCurve(x.clone(), y.clone());
    }

    /** Whether this x lies between the first and the last point. */
    public boolean covers(double at) {
        return at >= x[0] && at <= x[x.length - 1];
    }

    /** Least x. */
    public double low() {
        return x[0];
    }

    /** Greatest x. */
    public double high() {
        return x[x.length - 1];
    }

    /** Value at an x; the end value outside the points. */
    public double at(double where) {
        int last = x.length - 1;
        if (where <= x[0]) {
            return y[0];
        }
        if (where >= x[last]) {
            return y[last];
        }
        int i = 0;
        while (where >= x[i + 1]) {
            i++;
        }
        double h = x[i + 1] - x[i];
        double t = (where - x[i]) / h;
        double u = 1 - t;
        return u * u * (y[i] * (1 + 2 * t) + slope[i] * h * t)
                + t * t * (y[i + 1] * (3 - 2 * t) - slope[i + 1] * h * u);
    }

    private static double[] slopes(double[] x, double[] y) {
        int n = x.length;
        double[] slope = new double[n];
        for (int i = 1; i < n - 1; i++) {
            slope[i] = inner(x[i] - x[i - 1], x[i + 1] - x[i], y[i] - y[i - 1], y[i + 1] - y[i]);
        }
        slope[0] = end(x, y, 0, 1, slope[1], n);
        slope[n - 1] = end(x, y, n - 2, n - 1, slope[n - 2], n);
        return slope;
    }

    private static double inner(double h0, double h1, double dy0, double dy1) {
        double d0 = dy0 / h0;
        double d1 = dy1 / h1;
        if (d0 * d1 <= 0) {
            return 0;
        }
        double w0 = 2 * h1 + h0;
        double w1 = h1 + 2 * h0;
        return (w0 + w1) / (w0 / d0 + w1 / d1);
    }

    /** At an end the slope that makes the last piece a parabola, held between nothing and three times the chord. */
    private static double end(double[] x, double[] y, int i, int j, double innerSlope, int n) {
        double chord = (y[j] - y[i]) / (x[j] - x[i]);
        if (n == 2) {
            return chord;
        }
        double slope = (3 * chord - innerSlope) / 2;
        if (slope * chord <= 0) {
            return 0;
        }
        return Math.abs(slope) > 3 * Math.abs(chord) ? 3 * chord : slope;
    }
}
