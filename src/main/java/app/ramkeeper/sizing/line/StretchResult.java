package app.ramkeeper.sizing.line;

import app.ramkeeper.sizing.pipe.PipeType;
import app.ramkeeper.sizing.quantity.Check;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Pressure;
import java.util.List;
import java.util.Optional;

/**
 * A stretch under load.
 *
 * @param stretch the stretch
 * @param fromM chainage of its start, m
 * @param velocityMs greatest mean velocity in it, m/s
 * @param lossM head lost in it, m
 * @param greatest greatest gauge pressure anywhere in it, running, at rest or shut
 * @param rating its class against that pressure, at the pipe's temperature
 * @param leastClass weakest class of the same size that bears it; empty if none does
 * @param notes of the friction and the derating
 */
public record StretchResult(
        Stretch stretch,
        double fromM,
        double velocityMs,
        double lossM,
        Pressure greatest,
        Check rating,
        Optional<PipeType> leastClass,
        List<Note> notes) {

    /** Keeps its own copy of the notes. */
    public StretchResult {
        notes = List.copyOf(notes);
    }
}
