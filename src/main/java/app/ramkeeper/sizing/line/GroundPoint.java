package app.ramkeeper.sizing.line;

import app.ramkeeper.sizing.quantity.Require;

/**
 * A point of the ground profile.
 *
 * @param chainageM distance from the pump along the route in plan, m, 0 or more
 * @param levelM level of the pipe there, m above any one datum
 */
public record GroundPoint(double chainageM, double levelM) {

    /** Refuses NaN, infinity and a chainage below zero. */
    public GroundPoint {
        Require.notNegative("chainage", chainageM, "m");
        Require.finite("level", levelM, "m");
    }
}
