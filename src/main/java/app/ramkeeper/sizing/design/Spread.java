package app.ramkeeper.sizing.design;

import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.quantity.Uncertain;

/**
 * What a delivery forecast does not know for sure, each normal about its value and cut at what can be.
 *
 * @param fall m
 * @param lift standing lift above the pumps, m
 * @param measuredSource as measured, m3/s
 * @param dryShare what a dry month gives of what was measured, 0 to 1
 * @param mustStayM3s what must stay in the stream, m3/s; not uncertain
 * @param model what pumps deliver of what the library says; see {@link #MODEL_PRIOR}
 * @param running share of the time running
 */
public record Spread(
        Uncertain fall,
        Uncertain lift,
        Uncertain measuredSource,
        Uncertain dryShare,
        double mustStayM3s,
        Uncertain model,
        Uncertain running) {

    /** The model's own error until installs have been compared: 1 with a standard uncertainty of 0.15. Our prior. */
    public static final Uncertain MODEL_PRIOR = new Uncertain(1, 0.15);

    /** About nine tenths of the time running (common practice, no source), with 0.04. */
    public static final Uncertain USUAL_RUNNING = new Uncertain(0.9, 0.04);

    /** Refuses values that cannot be, among them a lift not above the fall. */
    public Spread {
        Require.positive("fall", fall.value(), "m");
        Require.positive("lift", lift.value(), "m");
        if (lift.value() <= fall.value()) {
            throw new ImpossibleInput("lift", lift.value() + " m", "more than the fall of " + fall.value() + " m");
        }
        Require.notNegative("measured source", measuredSource.value(), "m3/s");
        Require.within("dry share", dryShare.value(), 0, 1, "");
        Require.notNegative("water that must stay", mustStayM3s, "m3/s");
        Require.positive("model factor", model.value(), "");
        Require.within("share of time running", running.value(), 0, 1, "");
    }
}
