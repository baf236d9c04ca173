package app.ramkeeper.sizing.pipe;

/**
 * Friction formulas from the literature, beside the library's own law, for cross checks and for comparing with others.
 *
 * <p>Like {@link Friction} these check nothing; each says for which Reynolds numbers it was made. Darcy's factor f.
 */
public final class PublishedFriction {

    private PublishedFriction() {}

    /**
     * One formula for all flow: laminar, transition and turbulent.
     *
     * <p>Source: Churchill, S. W. 1977, Friction-factor equation spans all fluid-flow regimes, Chemical Engineering
     * 84(24), 91-92. Worked value: 0.018462625 at Re 1e5 and relative roughness 1e-4.
     */
    public static double churchill(double re, double relRough) {
        double a = Math.pow(2.457 * Math.log(1 / (Math.pow(7 / re, 0.9) + 0.27 * relRough)), 16);
        double b = Math.pow(37_530 / re, 16);
        return 8 * Math.pow(Math.pow(8 / re, 12) + Math.pow(a + b, -1.5), 1 / 12.0);
    }

    /**
     * Explicit stand-in for Colebrook-White, Re 4000 to 1e8, within about 2 %.
     *
     * <p>Source: Haaland, S. E. 1983, Simple and explicit formulas for the friction factor in turbulent pipe flow, J.
     * Fluids Eng. 105, 89-90. Worked value: 0.018265053 at Re 1e5, 1e-4.
     */
    public static double haaland(double re, double relRough) {
        double root = -1.8 * Math.log10(Math.pow(relRough / 3.7, 1.11) + 6.9 / re);
        return 1 / (root * root);
    }

    /** Smooth pipe, Re 4000 to 1e5: 0.3164 Re^-0.25 (Blasius, H. 1913). Worked value: 0.03164 at Re 1e4. */
    public static double blasius(double re) {
        return 0.3164 / Math.pow(re, 0.25);
    }

    /** Fully rough limit: 1/sqrt f = -2 log10(k/3.7) (von Karman 1930). Worked value: 0.0379 at k 0.01. */
    public static double fullyRough(double relRough) {
        double root = -2 * Math.log10(relRough / 3.7);
        return 1 / (root * root);
    }

    /**
     * Explicit stand-in for Colebrook-White: f = 0.25 / log10(k/3.7 + 5.74/Re^0.9)^2, Re 5000 to 1e8, k 1e-6 to 1e-2.
     *
     * <p>Source: Swamee, P. K. and Jain, A. K. 1976, Explicit equations for pipe-flow problems, J. Hydraulics Div. ASCE
     * 102(5), 657-664. Worked value: 0.01845 at Re 1e5, k 1e-4.
     */
    public static double swameeJain(double re, double relRough) {
        double log = Math.log10(relRough / 3.7 + 5.74 / Math.pow(re, 0.9));
        return 0.25 / (log * log);
    }

    /**
     * The law of the US EPA network engine: 64/Re below 2000, Swamee-Jain from 4000, Dunlop's cubic between.
     *
     * <p>The cubic joins the ends in value and slope. Source: Rossman, L. A. et al. 2020, EPANET 2.2 User Manual, US EPA
     * EPA-600/R-20/133, appendix on headloss; Dunlop, E. J. 1991. Worked values: 0.033074 at Re 3000, smooth; 0.041695 at
     * Re 4000, k 1e-3.
     */
    public static double dunlop(double re, double relRough) {
        if (re < 2000) {
            return 64 / re;
        }
        if (re > 4000) {
            return swameeJain(re, relRough);
        }
        double y2 = relRough / 3.7 + 5.74 / Math.pow(4000, 0.9);
        double y3 = -2 / Math.log(10) * Math.log(y2);
        double fa = 1 / (y3 * y3);
        double fb = (2 - 0.00514215 / (y2 * y3)) * fa;
        double r = re / 2000;
        double x1 = 7 * fa - fb;
        double x2 = 0.128 - 17 * fa + 2.5 * fb;
        double x3 = -0.128 + 13 * fa - 2 * fb;
        double x4 = r * (0.032 - 3 * fa + 0.5 * fb);
        return x1 + r * (x2 + r * (x3 + x4));
    }

    /**
     * Bore for a flow and head loss, explicit; k/D 1e-6 to 1e-2, Re 3e3 to 3e8, within 2 % of Colebrook-White.
     *
     * <p>D = 0.66 [eps^1.25 (L Q^2/(g h))^4.75 + nu Q^9.4 (L/(g h))^5.2]^0.04. Source: Swamee and Jain 1976 (see {@link
     * #swameeJain}). Worked value: 0.271 m for 0.35 m3/s, 150 m, 20 m lost, nu 1.655e-5, smooth, g 9.81.
     */
    public static double swameeJainBore(
            double flowM3s, double lossM, double lengthM, double roughnessM, double nu, double g) {
        double perHead = lengthM / (g * lossM);
        double rough = Math.pow(roughnessM, 1.25) * Math.pow(perHead * flowM3s * flowM3s, 4.75);
        double smooth = nu * Math.pow(flowM3s, 9.4) * Math.pow(perHead, 5.2);
        return 0.66 * Math.pow(rough + smooth, 0.04);
    }

    /**
     * Head lost by Hazen-Williams, m: 10.67 L Q^1.852 / (C^1.852 D^4.871), SI.
     *
     * <p>A cross check for cool water in pipes above about 50 mm at about 1 m/s; it knows no viscosity. Source: Williams,
     * G. S. and Hazen, A. 1905, Hydraulic tables; SI constant as in the EPANET 2.2 User Manual. Worked value: 0.527 m for
     * 5 l/s over 100 m of 100 mm bore, C 130.
     */
    public static double hazenWilliams(double flowM3s, double boreM, double lengthM, double coefficient) {
        return 10.67 * lengthM * Math.pow(flowM3s / coefficient, 1.852) / Math.pow(boreM, 4.871);
    }
}
