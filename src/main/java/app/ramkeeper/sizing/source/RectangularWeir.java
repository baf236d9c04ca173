package app.ramkeeper.sizing.source;

import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Numbers;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.quantity.Uncertain;
import java.util.ArrayList;
import java.util.List;

/** Sharp-crested rectangular weir, with end contractions or over the full width. */
public final class RectangularWeir {

    /** Relative standard uncertainty of either coefficient in the field; judgement from 2 to 3 % in the laboratory. */
    public static final double COEFFICIENT_UNCERTAINTY = 0.03;

    private static final double LEAST_HEAD_M = 0.03;
    private static final double LEAST_HEIGHT_M = 0.15;

    private RectangularWeir() {}

    /**
     * Contracted weir by Francis, m3/s: 1.84 (L - 0.1 n h) h^1.5.
     *
     * <p>For standard gravity, head up to a third of the length. Source: Francis, J. B. 1855, Lowell hydraulic
     * experiments; USBR Water Measurement Manual 2001, section 7. Worked value: 27.93 l/s for 0.5 m, 0.1 m, two ends.
     *
     * @param lengthM crest length, m, more than 0
     * @param headM head, m, 0 to a head that leaves some crest
     * @param contractions number of end contractions, 0, 1 or 2
     */
    public static double francis(double lengthM, double headM, int contractions) {
        Require.positive("crest length", lengthM, "m");
        Require.within("end contractions", contractions, 0, 2, "");
        Require.within("head over the weir", headM, 0, contractions == 0 ? 1e3 : 2 * lengthM, "m");
        return 1.84 * (lengthM - 0.1 * contractions * headM) * Math.pow(headM, 1.5);
    }

    /**
     * Full-width weir by Ackers, m3/s: 0.564 (1 + 0.15 h/p) b sqrt(g) (h + 0.001)^1.5.
     *
     * <p>Head above 0.02 m, crest height above 0.15 m, h/p below 2.2. Source: Ackers, P., White, W. R., Perkins, J. A.
     * and Harrison, A. J. M. 1978, Weirs and flumes for flow measurement, Wiley. Worked value: 0.649 m3/s for h 0.3, p
     * 0.4, b 2 m.
     *
     * @param widthM width of channel and crest, m, more than 0
     * @param headM head, m, 0 or more
     * @param heightM crest above the bed, m, more than 0
     * @param gravity m/s2
     */
    public static double fullWidth(double widthM, double headM, double heightM, double gravity) {
        Require.positive("channel width", widthM, "m");
        Require.notNegative("head over the weir", headM, "m");
        Require.positive("height of the crest", heightM, "m");
        Require.positive("gravity", gravity, "m/s2");
        return 0.564 * (1 + 0.15 * headM / heightM) * widthM * Math.sqrt(gravity) * Math.pow(headM + 0.001, 1.5);
    }

    /**
     * Contracted weir (both ends) with its uncertainty; notes for a head below 0.03 m or above a third of the crest.
     *
     * <p>Worked value: 27.9 l/s +- 4.2 % for 0.5 m and 0.100 +- 0.002 m.
     */
    public static FlowMeasurement measureContracted(double lengthM, Uncertain headM) {
        double head = Require.positive("head over the weir", headM.value(), "m");
        double flow = francis(lengthM, head, 2);
        double exponent = 1.5 - 0.2 * head / (lengthM - 0.2 * head);
        return measured(flow, exponent * headM.relativeUncertainty(), head, lengthM / 3);
    }

    /**
     * Full-width weir with its uncertainty; notes for a head below 0.03 m or above 2.2 times the crest's height, and for
     * a crest lower than 0.15 m. Worked value: 649 l/s +- 3.2 % for h 0.300 +- 0.002, p 0.4, b 2 m.
     */
    public static FlowMeasurement measureFullWidth(double widthM, Uncertain headM, double heightM, double gravity) {
        double head = Require.positive("head over the weir", headM.value(), "m");
        double flow = fullWidth(widthM, head, heightM, gravity);
        double exponent = 1.5 * head / (head + 0.001) + 0.15 * head / (heightM + 0.15 * head);
        FlowMeasurement found = measured(flow, exponent * headM.relativeUncertainty(), head, 2.2 * heightM);
        if (heightM >= LEAST_HEIGHT_M) {
            return found;
        }
        List<Note> notes = new ArrayList<>(found.notes());
        notes.add(new Note(
                Note.Code.OUTSIDE_RANGE,
                Numbers.sentence(
                        "The crest is %s m above the bed, less than the 0.15 m that the weir formula was made for.",
                        Numbers.text(heightM))));
        return new FlowMeasurement(found.method(), found.cubicMetresPerSecond(), notes);
    }

    private static FlowMeasurement measured(double flow, double fromHead, double head, double mostHead) {
        List<Note> notes = new ArrayList<>();
        if (head < LEAST_HEAD_M || head > mostHead) {
            notes.add(Note.outside("the weir formula", "head", head, LEAST_HEAD_M, mostHead, "m"));
        }
        Uncertain result = Uncertain.relative(flow, Math.hypot(COEFFICIENT_UNCERTAINTY, fromHead));
        return new FlowMeasurement("rectangular weir", result, notes);
    }
}
