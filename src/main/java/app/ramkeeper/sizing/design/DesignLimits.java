package app.ramkeeper.sizing.design;

import app.ramkeeper.sizing.drive.LengthRule;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.quantity.Temperature;
import app.ramkeeper.sizing.surge.Anchorage;

/**
 * The office's rules that a design must keep.
 *
 * @param lengthRule rule for the drive pipe's length by the fall
 * @param anchorage how the drive pipe is held
 * @param closingVelocity velocity in the drive pipe when the waste valve shuts, m/s, more than 0
 * @param mostVelocity greatest velocity in the delivery pipe, m/s, more than 0
 * @param mostPumps side by side, 1 to 12
 * @param pipeWall warmest the delivery pipe gets
 * @param deliveryMayShut whether a float valve, frost or a hand can shut the delivery, so that all must bear the dead head
 * @param joint price of a change from one delivery pipe to another, 0 or more, in the catalogue's currency
 */
public record DesignLimits(
        LengthRule lengthRule,
        Anchorage anchorage,
        double closingVelocity,
        double mostVelocity,
        int mostPumps,
        Temperature pipeWall,
        boolean deliveryMayShut,
        double joint) {

    /** Refuses velocities of nothing and a number of pumps outside 1 to 12. */
    public DesignLimits {
        Require.positive("closing velocity", closingVelocity, "m/s");
        Require.positive("greatest delivery velocity", mostVelocity, "m/s");
        Require.notNegative("price of a joint", joint, "");
        Require.within("most pumps", mostPumps, 1, 12, "");
    }

    /**
     * Common practice, no source: the rule of bores alone, 1.5 m/s at closing, 1.5 m/s in the delivery, four pumps, pipe
     * at 20 degC, an overflow instead of a float, 25 for a change of pipe.
     */
    public static DesignLimits usual() {
        return new DesignLimits(
                LengthRule.BORES_150_TO_1000, Anchorage.THROUGHOUT, 1.5, 1.5, 4, Temperature.ofCelsius(20), false, 25);
    }
}
