package app.ramkeeper.sizing.pipe;

/**
 * Loss coefficients K of usual fittings: the head lost is K V^2 / 2g.
 *
 * <p>Source: Rossman, L. A. et al. 2020, EPANET 2.2 User Manual, US EPA EPA-600/R-20/133, table of minor loss
 * coefficients for selected fittings. Fittings of one kind vary by a third or so.
 */
public enum Fitting {
    GLOBE_VALVE_OPEN(10),
    ANGLE_VALVE_OPEN(5),
    SWING_CHECK_OPEN(2.5),
    GATE_VALVE_OPEN(0.2),
    SHORT_ELBOW(0.9),
    MEDIUM_ELBOW(0.8),
    LONG_ELBOW(0.6),
    ELBOW_45(0.4),
    RETURN_BEND(2.2),
    TEE_RUN(0.6),
    TEE_BRANCH(1.8),
    SQUARE_ENTRANCE(0.5),
    EXIT(1.0);

    private final double coefficient;

    Fitting(double coefficient) {
        this.coefficient = coefficient;
    }

    /** Loss coefficient K. Worked value: 10 for a globe valve. */
    public double coefficient() {
        return coefficient;
    }

    /**
     * Head lost at a velocity, m.
     *
     * <p>Worked value: 1.147 m for K 10 at 1.5 m/s and standard gravity.
     */
    public static double headLoss(double coefficient, double velocityMs, double gravity) {
        return coefficient * velocityMs * Math.abs(velocityMs) / (2 * gravity);
    }
}
