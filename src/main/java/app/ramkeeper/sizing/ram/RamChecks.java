package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Require;

/** What every reckoning of a ram refuses. */
final class RamChecks {

    private RamChecks() {}

    /** A fall above nothing and a lift above the fall. */
    static void fallAndLift(Head fall, Head lift) {
        Require.positive("fall", fall.metres(), "m");
        if (lift.metres() <= fall.metres()) {
            throw new ImpossibleInput("lift", lift.metres() + " m", "more than the fall of " + fall.metres() + " m");
        }
    }
}
