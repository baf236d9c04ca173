package app.ramkeeper.sizing.source;

import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.quantity.Uncertain;
import app.ramkeeper.sizing.quantity.Volume;
import java.util.ArrayList;
import java.util.List;

/** Flow from the time that it takes to fill a vessel of known volume. */
public final class BucketAndWatch {

    /** Standard uncertainty of one hand-stopped time, s; common practice, no source. */
    public static final double HAND_STOPPED_S = 0.3;

    private static final double SHORTEST_GOOD_S = 5;

    private BucketAndWatch() {}

    /**
     * Flow = volume by mean time.
     *
     * <p>Uncertainty: of the mean time (spread of the runs, at least the watch) and of the volume, independent. Notes: a
     * single run, runs shorter than 5 s, runs that differ by more than a tenth. Worked value: 37.85 l (10 US gal) in 50 s
     * is 0.757 l/s.
     *
     * @param volume filled each run, more than 0
     * @param volumeUncertainty standard uncertainty of the volume as a share of it, 0 to 0.5
     * @param seconds the times
     * @param watchUncertainty standard uncertainty of one time, s, see {@link #HAND_STOPPED_S}
     */
    public static FlowMeasurement measure(
            Volume volume, double volumeUncertainty, Readings seconds, double watchUncertainty) {
        Require.positive("bucket volume", volume.cubicMetres(), "m3");
        Require.within("volume uncertainty", volumeUncertainty, 0, 0.5, "of the volume");
        double time = seconds.mean();
        double flow = volume.cubicMetres() / time;
        double relative = Math.hypot(seconds.uncertaintyOfMean(watchUncertainty) / time, volumeUncertainty);
        return new FlowMeasurement("bucket and watch", Uncertain.relative(flow, relative), notes(seconds));
    }

    private static List<Note> notes(Readings seconds) {
        List<Note> notes = new ArrayList<>();
        if (seconds.count() == 1) {
            notes.add(new Note(Note.Code.ASSUMED, "Only one run: the spread is taken from the watch alone."));
        }
        if (seconds.mean() < SHORTEST_GOOD_S) {
            notes.add(Note.outside("bucket and watch", "the filling time", seconds.mean(), SHORTEST_GOOD_S, 600, "s"));
        }
        if (seconds.spread() > 0.1 * seconds.mean()) {
            notes.add(new Note(
                    Note.Code.CAUTION, "The runs differ by more than a tenth: look for leaks past the bucket."));
        }
        return notes;
    }
}
