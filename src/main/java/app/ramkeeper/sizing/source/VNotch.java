package app.ramkeeper.sizing.source;

import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.quantity.Uncertain;
import java.util.ArrayList;
import java.util.List;

/**
 * Sharp-crested triangular notch, fully contracted.
 *
 * <p>Source: ISO 1438:2017, Hydrometry, Open channel flow measurement using thin-plate weirs, section on triangular
 * notches (formula of Kindsvater and Shen); coefficients of 90 degrees as there, of other angles read off the curves from
 * memory, straight between the points.
 *
 * @param angleDegrees full angle of the notch, 20 to 100
 */
public record VNotch(double angleDegrees) {

    /** Relative standard uncertainty of the coefficient; ISO 1438 gives 1 to 2 % at 95 %, doubled here for field plates. */
    public static final double COEFFICIENT_UNCERTAINTY = 0.02;

    private static final double LEAST_HEAD_M = 0.06;
    private static final double MOST_HEAD_M = 0.38;
    private static final double MOST_HEAD_BY_HEIGHT = 0.4;

    private static final double[] ANGLE = {20, 40, 60, 80, 90, 100};
    private static final double[] COEFFICIENT = {0.592, 0.582, 0.577, 0.576, 0.578, 0.581};
    private static final double[] HEAD_ADDED_MM = {2.7, 1.7, 1.1, 0.9, 0.85, 0.88};

    /** Refuses angles outside 20 to 100 degrees. */
    public VNotch {
        Require.within("notch angle", angleDegrees, 20, 100, "degrees");
    }

    /** The right-angled notch. */
    public static VNotch rightAngled() {
        return new VNotch(90);
    }

    /** Discharge coefficient. Worked value: 0.578 for 90 degrees. */
    public double coefficient() {
        return at(COEFFICIENT);
    }

    /** Head added for viscosity and surface tension, m. Worked value: 0.00085 for 90 degrees. */
    public double headAddedM() {
        return at(HEAD_ADDED_MM) / 1000;
    }

    /**
     * Flow over the notch, m3/s: 8/15 C tan(angle/2) sqrt(2g) (h + kh)^2.5.
     *
     * <p>Worked value: 4.41 l/s for 90 degrees, C 0.578, kh 0.85 mm, h 0.1 m.
     *
     * @param coefficient C, more than 0
     * @param headAddedM kh, m, 0 or more
     * @param angleDegrees full angle, more than 0 and less than 180
     * @param headM head above the bottom of the notch, m, 0 or more
     * @param gravity m/s2
     */
    public static double flow(
            double coefficient, double headAddedM, double angleDegrees, double headM, double gravity) {
        Require.positive("discharge coefficient", coefficient, "");
        Require.notNegative("added head", headAddedM, "m");
        Require.within("notch angle", angleDegrees, 1, 179, "degrees");
        Require.notNegative("head over the notch", headM, "m");
        Require.positive("gravity", gravity, "m/s2");
        return 8.0
                / 15
                * coefficient
                * Math.tan(Math.toRadians(angleDegrees / 2))
                * Math.sqrt(2 * gravity)
                * Math.pow(headM + headAddedM, 2.5);
    }

    /**
     * Flow with its uncertainty from the head's and the coefficient's.
     *
     * <p>Notes: head outside 0.06 to 0.38 m, head above 0.4 of the notch's height over the bed. Worked value: 4.41 l/s
     * +- 5.3 % for 0.100 +- 0.002 m at 90 degrees.
     *
     * @param headM head measured well upstream (2 to 4 heads), m, more than 0
     * @param heightM bottom of the notch above the bed upstream, m, more than 0
     * @param gravity m/s2
     */
    public FlowMeasurement measure(Uncertain headM, double heightM, double gravity) {
        double head = Require.positive("head over the notch", headM.value(), "m");
        Require.positive("height of the notch", heightM, "m");
        double flow = flow(coefficient(), headAddedM(), angleDegrees, head, gravity);
        double relative =
                Math.hypot(COEFFICIENT_UNCERTAINTY, 2.5 * headM.standardUncertainty() / (head + headAddedM()));
        List<Note> notes = new ArrayList<>();
        if (head < LEAST_HEAD_M || head > MOST_HEAD_M) {
            notes.add(Note.outside("the notch formula", "head", head, LEAST_HEAD_M, MOST_HEAD_M, "m"));
        }
        if (head / heightM > MOST_HEAD_BY_HEIGHT) {
            notes.add(Note.outside(
                    "full contraction", "head by height of the notch", head / heightM, 0, MOST_HEAD_BY_HEIGHT, ""));
        }
        return new FlowMeasurement("V-notch", Uncertain.relative(flow, relative), notes);
    }

    private double at(double[] values) {
        int i = 1;
        while (ANGLE[i] < angleDegrees) {
            i++;
        }
        double share = (angleDegrees - ANGLE[i - 1]) / (ANGLE[i] - ANGLE[i - 1]);
        return values[i - 1] + share * (values[i] - values[i - 1]);
    }
}
