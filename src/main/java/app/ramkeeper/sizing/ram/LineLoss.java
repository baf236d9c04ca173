package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.pipe.Friction;
import app.ramkeeper.sizing.pipe.PipeRun;
import app.ramkeeper.sizing.water.Ambient;
import java.util.List;

/** Head that a line of pipes takes from a steady flow; never less for more flow. */
@FunctionalInterface
public interface LineLoss {

    /** No loss at all. */
    LineLoss NONE = flow -> 0;

    /**
     * Head lost, m.
     *
     * @param flowM3s 0 or more, m3/s
     */
    double metres(double flowM3s);

    /** Loss of runs of pipe one after the other (Darcy-Weisbach, see {@link Friction}). */
    static LineLoss of(List<PipeRun> runs, Ambient ambient) {
        double nu = ambient.water().kinematicViscosity();
        double g = ambient.gravity();
        PipeRun[] pipes = runs.toArray(PipeRun[]::new);
        return flow -> {
            double sum = 0;
            for (PipeRun pipe : pipes) {
                sum += Friction.headLoss(
                        flow,
                        pipe.bore().metres(),
                        pipe.length().metres(),
                        pipe.roughness().metres(),
                        pipe.fittings(),
                        nu,
                        g);
            }
            return sum;
        };
    }
}
