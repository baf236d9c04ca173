package app.ramkeeper.sizing.design;

import app.ramkeeper.sizing.quantity.Require;

/**
 * What an install was found to do beside the model, as factors that a user sees and sets; nothing else is calibrated.
 *
 * @param delivered measured by computed delivered flow, more than 0
 * @param beat measured by computed beat rate, more than 0
 */
public record Factors(double delivered, double beat) {

    /** Not calibrated. */
    public static final Factors NONE = new Factors(1, 1);

    /** Refuses factors of nothing. */
    public Factors {
        Require.positive("delivered factor", delivered, "");
        Require.positive("beat factor", beat, "");
    }
}
