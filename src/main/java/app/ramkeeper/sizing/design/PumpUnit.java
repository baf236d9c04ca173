package app.ramkeeper.sizing.design;

import app.ramkeeper.sizing.pipe.Friction;
import app.ramkeeper.sizing.pipe.PipeRun;
import app.ramkeeper.sizing.ram.PumpModel;
import app.ramkeeper.sizing.water.Ambient;

/**
 * One pump of a battery with the drive pipe that is its alone.
 *
 * @param model of the pump
 * @param drive its drive pipe
 */
public record PumpUnit(PumpModel model, PipeRun drive) {

    /** Head its drive pipe takes at a mean drive flow, m. */
    double driveLossM(double flowM3s, Ambient ambient) {
        return Friction.headLoss(
                flowM3s,
                drive.bore().metres(),
                drive.length().metres(),
                drive.roughness().metres(),
                drive.fittings(),
                ambient.water().kinematicViscosity(),
                ambient.gravity());
    }
}
