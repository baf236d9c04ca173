package app.ramkeeper.sizing.source;

import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.quantity.Uncertain;
import java.util.ArrayList;
import java.util.List;

/** Flow of a stream from floats timed along a measured reach and the area of its section. */
public final class FloatArea {

    /**
     * Mean velocity by surface velocity: 0.85 with a standard uncertainty of 0.06 for ordinary beds.
     *
     * <p>Source: FAO, Simple methods for aquaculture, Water, float method (0.85); the uncertainty is judgement from the
     * usual 0.7 (rough, shallow) to 0.9 (smooth, deep).
     */
    public static final Uncertain USUAL_FACTOR = new Uncertain(0.85, 0.06);

    private static final int ENOUGH_FLOATS = 3;
    private static final double SHORTEST_GOOD_S = 20;

    private FloatArea() {}

    /**
     * Flow = factor x area x distance / mean time.
     *
     * <p>Notes: fewer than three floats; a mean time below 20 s. Worked value: 10 m in 50 s over 0.30 m2 at 0.85 is 51
     * l/s.
     *
     * @param distanceM length of the reach, m, more than 0
     * @param seconds times of the floats
     * @param areaM2 mean area of the section, m2, more than 0
     * @param factor mean by surface velocity, 0.3 to 1, see {@link #USUAL_FACTOR}
     */
    public static FlowMeasurement measure(Uncertain distanceM, Readings seconds, Uncertain areaM2, Uncertain factor) {
        Require.positive("distance", distanceM.value(), "m");
        Require.positive("area of the section", areaM2.value(), "m2");
        Require.within("velocity factor", factor.value(), 0.3, 1, "");
        double time = seconds.mean();
        Uncertain perTime =
                Uncertain.relative(1 / time, seconds.uncertaintyOfMean(BucketAndWatch.HAND_STOPPED_S) / time);
        List<Note> notes = new ArrayList<>();
        if (seconds.count() < ENOUGH_FLOATS) {
            notes.add(new Note(Note.Code.CAUTION, "Fewer than three floats: the spread is hardly known."));
        }
        if (time < SHORTEST_GOOD_S) {
            notes.add(Note.outside("the float method", "mean time", time, SHORTEST_GOOD_S, 600, "s"));
        }
        return new FlowMeasurement(
                "float", factor.times(areaM2).times(distanceM).times(perTime), notes);
    }

    /**
     * Area of a section from soundings, m2, straight between them (mid-section of ISO 748 gives the same sum inside).
     *
     * <p>Worked value: depths 0, 0.2, 0.3, 0.1, 0 m at 0, 0.5, 1, 1.5, 2 m give 0.30 m2.
     *
     * @param offsetsM distance from the bank, m, rising
     * @param depthsM depth there, m, 0 or more
     */
    public static double area(double[] offsetsM, double[] depthsM) {
        if (offsetsM.length < 2 || offsetsM.length != depthsM.length) {
            throw new ImpossibleInput(
                    "soundings", offsetsM.length + " and " + depthsM.length, "as many depths as offsets, two or more");
        }
        double area = 0;
        for (int i = 1; i < offsetsM.length; i++) {
            double step = Require.positive("step between soundings", offsetsM[i] - offsetsM[i - 1], "m");
            double left = Require.notNegative("depth", depthsM[i - 1], "m");
            area += step * (left + Require.notNegative("depth", depthsM[i], "m")) / 2;
        }
        return area;
    }
}
