package app.ramkeeper.sizing.design;

import app.ramkeeper.sizing.pipe.PipeType;
import app.ramkeeper.sizing.quantity.Require;

/**
 * A pipe with its price per metre, laid.
 *
 * @param type of pipe
 * @param pricePerMetre in the office's currency, 0 or more; for ranking designs, a quote reckons money by itself
 */
public record PricedPipe(PipeType type, double pricePerMetre) {

    /** Refuses a price below nothing. */
    public PricedPipe {
        Require.notNegative("price per metre of " + type.words(), pricePerMetre, "");
    }
}
