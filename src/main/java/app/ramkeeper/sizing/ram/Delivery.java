package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.quantity.Flow;

/**
 * What a pump delivers at one duty.
 *
 * @param drive all water entering the pump
 * @param delivered what is lifted
 * @param dAubuisson efficiency q h/(Q H), h above the pump
 * @param rankine efficiency q (h-H)/((Q-q) H)
 */
public record Delivery(Flow drive, Flow delivered, double dAubuisson, double rankine) {

    static Delivery of(double drive, double delivered, double fall, double lift) {
        return new Delivery(
                new Flow(drive),
                new Flow(delivered),
                Efficiency.dAubuisson(drive, delivered, fall, lift),
                Efficiency.rankine(drive, delivered, fall, lift));
    }
}
