package app.ramkeeper.quotes.design;

import app.ramkeeper.sizing.line.DeliveryLine;
import app.ramkeeper.sizing.ram.LineLoss;
import app.ramkeeper.sizing.water.Ambient;

/**
 * A line's loss from a table of flows, straight between them: thousands of trials ask for it.
 *
 * <p>Straight lines between points of a curve that bends upwards lie above it, so the loss is never too small.
 */
final class LineTable implements LineLoss {

    private static final int STEPS = 96;

    private final DeliveryLine line;
    private final Ambient ambient;
    private final double step;
    private final double[] losses = new double[STEPS + 1];

    /** Reckons the loss up to a flow; beyond it the line itself is asked. */
    LineTable(DeliveryLine line, Ambient ambient, double mostM3s) {
        this.line = line;
        this.ambient = ambient;
        this.step = mostM3s / STEPS;
        for (int i = 0; i <= STEPS; i++) {
            losses[i] = loss(i * step);
        }
    }

    private double loss(double flow) {
        return Math.max(0, line.headAtPumpM(flow, ambient) - line.lift().metres());
    }

    @Override
    public double metres(double flowM3s) {
        int i = (int) (flowM3s / step);
        if (i >= STEPS) {
            return loss(flowM3s);
        }
        return losses[i] + (flowM3s / step - i) * (losses[i + 1] - losses[i]);
    }
}
