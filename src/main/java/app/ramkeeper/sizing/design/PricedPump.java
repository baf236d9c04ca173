package app.ramkeeper.sizing.design;

import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.ram.PumpModel;

/**
 * A pump model with its price, fitted.
 *
 * @param model of the pump
 * @param price in the office's currency, 0 or more; for ranking designs, a quote reckons money by itself
 */
public record PricedPump(PumpModel model, double price) {

    /** Refuses a price below nothing. */
    public PricedPump {
        Require.notNegative("price of " + model.name(), price, "");
    }
}
