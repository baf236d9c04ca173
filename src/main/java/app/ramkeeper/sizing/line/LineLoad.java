package app.ramkeeper.sizing.line;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Temperature;
import app.ramkeeper.sizing.water.Ambient;
import java.util.Optional;

/**
 * What a line has to carry.
 *
 * @param delivered flow leaving the pump
 * @param ambient water, gravity, air
 * @param pipeWall warmest the pipe gets; black plastic in the sun passes 40 degC
 * @param shut gauge pressure at the pump with the delivery shut, if it may be shut (see
 *     {@link app.ramkeeper.sizing.surge.DeadHead}); empty where the tank overflows and nothing can shut
 */
public record LineLoad(Flow delivered, Ambient ambient, Temperature pipeWall, Optional<Pressure> shut) {

    /** A line that nothing can shut, its pipe at 20 degC. */
    public static LineLoad of(Flow delivered, Ambient ambient) {
        return new LineLoad(delivered, ambient, Temperature.ofCelsius(20), Optional.empty());
    }
}
