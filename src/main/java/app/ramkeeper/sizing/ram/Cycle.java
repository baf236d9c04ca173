package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Volume;
import java.util.List;

/**
 * One beat of a pump that has settled, and what follows from it. Nothing in it is put in: all of it is integrated.
 *
 * @param outcome whether it beats and lifts
 * @param openSeconds waste valve open or moving, s
 * @param deliverySeconds waste valve shut and water going through the delivery valve, s
 * @param waste lost through the waste valve in a beat, less what is drawn back in
 * @param delivered lifted in a beat
 * @param closingVelocity velocity in the drive pipe when the waste valve is shut, m/s
 * @param recoilVelocity velocity backwards after the delivery valve has shut, m/s
 * @param peak highest head at the pump in the beat, above the waste valve
 * @param deadHead head the first blow reaches against a shut delivery: velocity by wave speed by gravity, and the fall
 * @param energy where the beat's energy went
 * @param driveFlow all water entering the pump
 * @param deliveredFlow what is lifted
 * @param dAubuisson efficiency q h/(Q H), h above the pump
 * @param rankine efficiency q (h-H)/((Q-q) H)
 * @param notes what to know of it
 */
public record Cycle(
        Outcome outcome,
        double openSeconds,
        double deliverySeconds,
        Volume waste,
        Volume delivered,
        double closingVelocity,
        double recoilVelocity,
        Head peak,
        Head deadHead,
        Energy energy,
        Flow driveFlow,
        Flow deliveredFlow,
        double dAubuisson,
        double rankine,
        List<Note> notes) {

    /** How it turns out. */
    public enum Outcome {
        /** It beats and delivers. */
        DELIVERS,
        /** It beats, but its blow is too weak for the lift. */
        TOO_HIGH,
        /** The waste valve never shuts: water runs to waste without a beat. */
        STAYS_OPEN
    }

    /** Keeps its own copy of the notes. */
    public Cycle {
        notes = List.copyOf(notes);
    }

    /** Length of a beat, s; 0 if it does not beat. */
    public double period() {
        return openSeconds + deliverySeconds;
    }

    /** Beats per minute; 0 if it does not beat. Worked value: 60 for 0.8 s open and 0.2 s of delivery. */
    public double beatsPerMinute() {
        return period() == 0 ? 0 : 60 / period();
    }

    /** Whether a note of this kind is there. */
    public boolean has(Note.Code code) {
        return notes.stream().anyMatch(note -> note.code() == code);
    }

    /** Whether water is lifted. */
    public boolean delivers() {
        return outcome == Outcome.DELIVERS;
    }
}
