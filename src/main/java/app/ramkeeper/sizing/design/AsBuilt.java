package app.ramkeeper.sizing.design;

import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.quantity.Uncertain;
import app.ramkeeper.sizing.ram.CycleSetup;
import app.ramkeeper.sizing.ram.LineLoss;
import app.ramkeeper.sizing.ram.PumpModel;
import app.ramkeeper.sizing.water.Ambient;
import java.util.Optional;

/**
 * One pump as it stands.
 *
 * @param model of the pump
 * @param fall m, more than 0
 * @param standingLift m, more than the fall
 * @param drive drive flow it is set for, m3/s, more than 0
 * @param line what its delivery line takes
 * @param beat its drive pipe and valves, for beat and dead head, if they are known
 * @param factors found at this install
 * @param ambient water, gravity and air
 */
public record AsBuilt(
        PumpModel model,
        Uncertain fall,
        Uncertain standingLift,
        Uncertain drive,
        LineLoss line,
        Optional<CycleSetup> beat,
        Factors factors,
        Ambient ambient) {

    /** Refuses no fall, no drive flow and a lift not above the fall. */
    public AsBuilt {
        Require.positive("fall", fall.value(), "m");
        Require.positive("drive flow", drive.value(), "m3/s");
        if (standingLift.value() <= fall.value()) {
            throw new ImpossibleInput("lift", standingLift.value() + " m", "more than the fall of " + fall.value());
        }
    }

    /** The beat's setup under this fall and a head at the pump. */
    Optional<CycleSetup> beatAgainst(double headM) {
        return beat.map(setup -> setup.withLift(new Head(headM)).withFall(new Head(fall.value())));
    }
}
