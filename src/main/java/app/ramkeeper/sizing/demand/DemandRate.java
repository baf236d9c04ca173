package app.ramkeeper.sizing.demand;

import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Require;

/**
 * What one head wants in a day.
 *
 * @param kind who, such as "sheep"
 * @param state in what state, such as "hot weather"; "usual" where there is but one
 * @param litresPerDay litres a day each, 0 or more
 * @param source where the figure is from
 */
public record DemandRate(String kind, String state, double litresPerDay, String source) {

    /** Refuses blank words and rates below zero. */
    public DemandRate {
        Require.notNegative("demand of " + kind, litresPerDay, "l/day");
        if (kind.isBlank() || state.isBlank() || source.isBlank()) {
            throw new ImpossibleInput("demand rate", "blank kind, state or source", "words for all three");
        }
    }

    boolean isFor(String otherKind, String otherState) {
        return kind.equals(otherKind) && state.equals(otherState);
    }
}
