package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Noted;
import app.ramkeeper.sizing.quantity.Require;
import java.util.List;

/**
 * What a pump delivers for a fall, a lift and a drive flow.
 *
 * <p>Of every kind: more fall or more drive flow never gives less, more lift never gives more, and the energy lifted is
 * never more than the fall gives. Outside what it was made for, the edge stands where that promises too little and
 * nothing is delivered where it would promise too much; the notes say so.
 */
public interface Performance {

    /**
     * Delivered flow in m3/s; the inner loop, which checks nothing.
     *
     * @param fallM m, more than 0
     * @param liftM head at the pump with the line's friction, m, more than the fall
     * @param driveM3s m3/s, 0 or more
     */
    double deliveredM3s(double fallM, double liftM, double driveM3s);

    /** What to know of the value at a duty, among it whether the duty lies outside what this was made for. */
    List<Note> notes(double fallM, double liftM, double driveM3s);

    /**
     * Delivered flow and both efficiencies.
     *
     * @param fall more than 0
     * @param lift more than the fall
     * @param drive more than 0
     */
    default Noted<Delivery> at(Head fall, Head lift, Flow drive) {
        RamChecks.fallAndLift(fall, lift);
        double q = Require.positive("drive flow", drive.cubicMetresPerSecond(), "m3/s");
        double delivered = deliveredM3s(fall.metres(), lift.metres(), q);
        return new Noted<>(
                Delivery.of(q, delivered, fall.metres(), lift.metres()), notes(fall.metres(), lift.metres(), q));
    }
}
