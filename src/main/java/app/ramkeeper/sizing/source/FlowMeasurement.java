package app.ramkeeper.sizing.source;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.quantity.Uncertain;
import java.util.List;

/**
 * A measured flow.
 *
 * @param method how it was measured
 * @param cubicMetresPerSecond flow with its standard uncertainty, m3/s
 * @param notes what the reader must know
 */
public record FlowMeasurement(String method, Uncertain cubicMetresPerSecond, List<Note> notes) {

    /** Refuses a flow below zero. */
    public FlowMeasurement {
        Require.notNegative("measured flow", cubicMetresPerSecond.value(), "m3/s");
        notes = List.copyOf(notes);
    }

    /** The flow. */
    public Flow flow() {
        return new Flow(cubicMetresPerSecond.value());
    }

    /** Standard uncertainty as a flow. */
    public Flow uncertainty() {
        return new Flow(cubicMetresPerSecond.standardUncertainty());
    }

    /** Standard uncertainty as a share of the flow. */
    public double relativeUncertainty() {
        return cubicMetresPerSecond.relativeUncertainty();
    }
}
