package app.ramkeeper.sizing.line;

import app.ramkeeper.sizing.quantity.Flow;

/**
 * An outlet under load.
 *
 * @param outlet the outlet
 * @param flow its share of the delivered flow
 * @param headM head left at it beyond its water level, m; what is more than it wants must be throttled there
 */
public record OutletResult(Outlet outlet, Flow flow, double headM) {

    /**
     * Head beyond what the outlet wants, m, to be throttled so that the shares come out. Worked value: 3 m for 8 m of head
     * where 5 m are wanted.
     */
    public double surplusM() {
        return headM - outlet.residualM();
    }
}
