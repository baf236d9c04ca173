package app.ramkeeper.sizing.line;

import app.ramkeeper.sizing.pipe.PipeType;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Require;

/**
 * A part of the line laid in one kind of pipe; it starts where the one before ends.
 *
 * @param toM chainage of its end, m, more than 0
 * @param type pipe
 * @param roughness roughness height
 * @param fittings sum of the loss coefficients K of its fittings, spread evenly over it
 */
public record Stretch(double toM, PipeType type, Length roughness, double fittings) {

    /** Refuses an end at or below 0 and negative fittings. */
    public Stretch {
        Require.positive("end of the stretch", toM, "m");
        Require.notNegative("loss coefficient of the fittings", fittings, "");
    }

    /** New pipe with the roughness usual for its material and no fittings. */
    public static Stretch of(double toM, PipeType type) {
        return new Stretch(toM, type, type.material().roughness(), 0);
    }
}
