package app.ramkeeper.sizing.line;

import app.ramkeeper.sizing.pipe.PipeRun;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Require;
import java.util.Optional;

/**
 * A place where water leaves the line.
 *
 * @param name what people call it, such as "top tank"
 * @param chainageM where it leaves the line, m
 * @param waterLevelM level that the water has to reach: the tank's water level if it enters low, else the inlet's; m, same
 *     datum as the ground
 * @param share of the delivered flow, more than 0 to 1
 * @param residualM head wanted there beyond that level, m, 0 or more
 * @param branch pipe from the line to the outlet, if it stands off the line
 */
public record Outlet(
        String name, double chainageM, double waterLevelM, double share, double residualM, Optional<PipeRun> branch) {

    /** Refuses shares of nothing or more than all, and a residual below zero. */
    public Outlet {
        Require.notNegative("chainage of " + name, chainageM, "m");
        Require.finite("water level of " + name, waterLevelM, "m");
        Require.notNegative("residual head at " + name, residualM, "m");
        if (!(share > 0 && share <= 1)) {
            throw new ImpossibleInput("share of " + name, share, "more than 0, at most 1");
        }
    }

    /** The only outlet of a line, at its end, with no residual. */
    public static Outlet tank(double chainageM, double waterLevelM) {
        return new Outlet("tank", chainageM, waterLevelM, 1, 0, Optional.empty());
    }
}
