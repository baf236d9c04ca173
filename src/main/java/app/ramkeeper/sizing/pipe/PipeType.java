package app.ramkeeper.sizing.pipe;

import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Require;

/**
 * A pipe that can be bought.
 *
 * @param standard the standard whose table it is in
 * @param material what it is made of
 * @param series SDR or weight, such as "SDR 11" or "medium"
 * @param nominal nominal size: outside diameter in mm for plastics, DN for steel
 * @param outside outside diameter
 * @param wall least wall of the table
 * @param rating nominal pressure at 20 degC, gauge
 */
public record PipeType(
        String standard,
        PipeMaterial material,
        String series,
        int nominal,
        Length outside,
        Length wall,
        Pressure rating) {

    /** Refuses walls that leave no bore and ratings of nothing. */
    public PipeType {
        Require.positive("pipe wall", wall.metres(), "m");
        Require.positive("pressure rating", rating.pascals(), "Pa");
        if (wall.metres() * 2 >= outside.metres()) {
            throw new ImpossibleInput("pipe wall", wall.metres(), "less than half the outside diameter");
        }
    }

    /**
     * Bore: outside diameter less twice the wall. Worked value: 51.4 mm for PE 63 SDR 11.
     *
     * <p>The least wall gives the largest bore; the wall may be up to about a tenth thicker.
     */
    public Length bore() {
        return new Length(outside.metres() - 2 * wall.metres());
    }

    /** Name in sentences, such as "PE100 63 SDR 11". */
    public String words() {
        return material.words() + " " + nominal + " " + series;
    }
}
