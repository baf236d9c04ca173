package app.ramkeeper.sizing.design;

import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Uncertain;

/**
 * How far a reading is from what was expected.
 *
 * @param percent signed, of the expected value; negative for a reading below it
 * @param standardUncertaintyPercent of that percentage, from reading and expectation together
 */
public record Deviation(double percent, double standardUncertaintyPercent) {

    /** Standard uncertainties beyond which a deviation is worth speaking of: two, about 95 %. */
    public static final double CLEAR = 2;

    /**
     * Of a reading against an expectation in the same unit, independent of each other.
     *
     * <p>100 (r/e - 1), uncertainty to first order (JCGM 100:2008, 5.1.2). Worked value: 8 +- 0.4 against 10 +- 1 is -20 %
     * +- 8.94 %.
     *
     * @param expected not 0
     */
    public static Deviation of(Uncertain reading, Uncertain expected) {
        if (expected.value() == 0) {
            throw new ImpossibleInput("expected value", 0, "not 0");
        }
        double ratio = reading.value() / expected.value();
        double own = reading.standardUncertainty() / expected.value();
        double its = ratio * expected.standardUncertainty() / expected.value();
        return new Deviation(100 * (ratio - 1), 100 * Math.hypot(own, its));
    }

    /** Whether it goes beyond what the uncertainties explain. Worked value: -20 % +- 8.94 % does, +- 11 % does not. */
    public boolean clear() {
        return Math.abs(percent) > CLEAR * standardUncertaintyPercent;
    }
}
