package app.ramkeeper.sizing.source;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Numbers;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.quantity.Uncertain;
import java.util.ArrayList;
import java.util.List;

/**
 * What is left of a measured flow in the dry month, and what of it may be taken.
 *
 * @param share flow of the dry month by the flow on the day of measuring, with its standard uncertainty, 0 to 1
 * @param mustStay flow that has to stay in the stream
 */
public record DrySeason(Uncertain share, Flow mustStay) {

    /** Refuses a share outside 0 to 1. */
    public DrySeason {
        Require.within("dry-season share", share.value(), 0, 1, "of the measured flow");
    }

    /** Measured in the driest month and all of it may be taken. */
    public static DrySeason measuredDry() {
        return new DrySeason(Uncertain.exact(1), Flow.NONE);
    }

    /**
     * Flow that may be taken in the dry month: share x measured - what must stay, never below zero.
     *
     * <p>Notes: a share below 1 (it rests on judgement, measure again in the dry month), nothing left. Worked value: 60
     * l/min +- 5 %, share 0.5 +- 0.1, 10 l/min to stay, leaves 20 +- 6.2 l/min.
     */
    public FlowMeasurement usable(FlowMeasurement measured) {
        Uncertain dry = measured.cubicMetresPerSecond().times(share);
        double left = dry.value() - mustStay.cubicMetresPerSecond();
        List<Note> notes = new ArrayList<>(measured.notes());
        if (share.value() < 1) {
            notes.add(new Note(
                    Note.Code.ASSUMED,
                    Numbers.sentence(
                            "The dry-month flow is taken as %.0f %% of the day's: measure again in the dry month.",
                            share.value() * 100)));
        }
        if (left <= 0) {
            notes.add(new Note(Note.Code.CAUTION, "In the dry month no water is left to take."));
        }
        return new FlowMeasurement(
                measured.method() + ", dry month", new Uncertain(Math.max(0, left), dry.standardUncertainty()), notes);
    }
}
