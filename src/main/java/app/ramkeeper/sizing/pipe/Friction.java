package app.ramkeeper.sizing.pipe;

/**
 * Friction of water in round pipes: double in, double out, no objects made.
 *
 * <p>This is the inner loop: it checks nothing and gives NaN for nonsense. Callers check once and write the notes: see
 * {@link PipeRun}. Darcy's factor f throughout (four times Fanning's).
 */
public final class Friction {

    /** Below this Reynolds number the flow is taken as laminar. */
    public static final double LAMINAR_BELOW = 2000;

    /** From this Reynolds number the flow is taken as turbulent. */
    public static final double TURBULENT_FROM = 4000;

    private static final double HALF_LN_10 = 1.151292546497022842;
    private static final double ROUGH_TERM = HALF_LN_10 / (3.7 * 2.51);
    private static final double LN_RE_TERM = Math.log(HALF_LN_10 / 2.51);

    private Friction() {}

    /**
     * Darcy friction factor over the whole range of flow.
     *
     * <p>Laminar 64/Re below Re 2000; Colebrook-White from 4000; between them a cubic in Re that joins both in value and
     * slope (the idea of Dunlop's cubic, here matched to Colebrook-White itself; the choice of cubic is ours, nature
     * wanders there by some 20 %). Worked values: 0.064 at Re 1000; 0.018513866 at Re 1e5 and relative roughness 1e-4.
     *
     * @param re Reynolds number V D / nu, more than 0
     * @param relRough roughness height by bore, 0 to 0.05
     * @return Darcy friction factor
     */
    public static double factor(double re, double relRough) {
        if (re >= TURBULENT_FROM) {
            return colebrook(re, relRough);
        }
        if (re < LAMINAR_BELOW) {
            return 64 / re;
        }
        return transition(re, relRough);
    }

    /**
     * Colebrook-White: 1/sqrt f = -2 log10(k/3.7 + 2.51/(Re sqrt f)), solved to better than 1e-10 relative.
     *
     * <p>With F = (ln 10/2)/sqrt f it reads F + ln(X + F) = ln(Re ln 10/5.02), X = k Re ln 10/18.574. Two steps of
     * Halley's method suffice for Re 2000 to 1e9 and k 0 to 0.1 (a test walks the range); the second step's logarithm
     * is the first's and a short series. The equation itself is good to about 5 % (commercial pipe). Source: Colebrook, C.
     * F. 1939, Turbulent flow in pipes, J. Inst. Civ. Eng. 11, 133-156; substitution after Clamond, D. 2009, Ind. Eng. Chem. Res. 48,
     * 3665-3671. Worked value: 0.018513866 at Re 1e5, k 1e-4.
     */
    public static double colebrook(double re, double relRough) {
        double x = relRough * re * ROUGH_TERM;
        double target = Math.log(re) + LN_RE_TERM;
        double guess = target - 0.2;
        double log = Math.log(x + guess);
        double f = halley(guess, x, log, target);
        f = halley(f, x, log + logOfRatio((f - guess) / (2 * x + f + guess)), target);
        double root = HALF_LN_10 / f;
        return root * root;
    }

    private static double halley(double f, double x, double logOfSum, double target) {
        double residual = f + logOfSum - target;
        double s = x + f;
        double s1 = s + 1;
        return f - residual * s * s1 / (s1 * s1 + 0.5 * residual);
    }

    /** ln b/a for z = (b - a)/(b + a), by its series; here |z| is below 0.13, where it is good to 1e-14. */
    private static double logOfRatio(double z) {
        double w = z * z;
        double even = 1 + w * (1 / 3. + w * (1 / 5. + w * (1 / 7. + w * (1 / 9. + w * (1 / 11. + w / 13)))));
        return 2 * z * even;
    }

    /** Cubic (Hermite) in Re between 64/Re at 2000 and Colebrook-White at 4000. */
    private static double transition(double re, double relRough) {
        double span = TURBULENT_FROM - LAMINAR_BELOW;
        double f0 = 64 / LAMINAR_BELOW;
        double slope0 = -f0 / LAMINAR_BELOW * span;
        double f1 = colebrook(TURBULENT_FROM, relRough);
        double slope1 = colebrookSlope(TURBULENT_FROM, relRough, f1) * span;
        double t = (re - LAMINAR_BELOW) / span;
        double u = 1 - t;
        return u * u * (f0 * (1 + 2 * t) + slope0 * t) + t * t * (f1 * (3 - 2 * t) - slope1 * u);
    }

    /** Derivative of Colebrook-White's f by Re, from the implicit equation. */
    static double colebrookSlope(double re, double relRough, double f) {
        double big = HALF_LN_10 / Math.sqrt(f);
        double s = relRough * re * ROUGH_TERM + big;
        double dBig = (big / s) / re / (1 + 1 / s);
        return -2 * f / big * dBig;
    }

    /** Mean velocity in m/s of a flow (m3/s) in a bore (m). Worked value: 3.056 for 6 l/s in 50 mm. */
    public static double velocity(double flowM3s, double boreM) {
        return flowM3s / (Math.PI / 4 * boreM * boreM);
    }

    /**
     * Head lost in a pipe by friction and fittings, in m, with the sign of the flow.
     *
     * <p>Darcy-Weisbach: (f L/D + K) V |V| / 2g. Worked value: 9.82 m for 6 l/s over 60 m of 50 mm bore, roughness 2e-6
     * m, nu 1.139e-6 m2/s, g 9.81, K 0.
     *
     * @param flowM3s flow, m3/s
     * @param boreM bore, m
     * @param lengthM length, m
     * @param roughnessM roughness height, m
     * @param fittings sum of loss coefficients K
     * @param nu kinematic viscosity, m2/s
     * @param g gravity, m/s2
     */
    public static double headLoss(
            double flowM3s, double boreM, double lengthM, double roughnessM, double fittings, double nu, double g) {
        if (flowM3s == 0) {
            return 0;
        }
        double v = velocity(flowM3s, boreM);
        double speed = Math.abs(v);
        double f = factor(speed * boreM / nu, roughnessM / boreM);
        return (f * lengthM / boreM + fittings) * v * speed / (2 * g);
    }
}
