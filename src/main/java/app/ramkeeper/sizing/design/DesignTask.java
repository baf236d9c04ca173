package app.ramkeeper.sizing.design;

import app.ramkeeper.sizing.line.GroundProfile;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.water.Ambient;

/**
 * What a survey asks for.
 *
 * @param ground profile from the pump to the tank, in the levels' own datum
 * @param tankLevelM level the water must reach at the end of the profile, m
 * @param fall water level at the intake above the pumps
 * @param source what the source gives for the pumps in the dry month, after what must stay in the stream
 * @param demand what must be delivered, mean over the day
 * @param driveLength length of each drive pipe
 * @param limits the office's rules
 * @param ambient water, gravity and air
 */
public record DesignTask(
        GroundProfile ground,
        double tankLevelM,
        Head fall,
        Flow source,
        Flow demand,
        Length driveLength,
        DesignLimits limits,
        Ambient ambient) {

    /** Refuses no demand, no drive pipe, no fall, and a tank that is not above the source. */
    public DesignTask {
        Require.finite("level of the tank", tankLevelM, "m");
        Require.positive("fall", fall.metres(), "m");
        Require.positive("demand", demand.cubicMetresPerSecond(), "m3/s");
        Require.positive("drive pipe length", driveLength.metres(), "m");
        double lift = Math.max(ground.highestM(), tankLevelM) - ground.pumpLevelM();
        if (lift <= fall.metres()) {
            throw new ImpossibleInput(
                    "lift",
                    lift + " m",
                    "more than the fall of " + fall.metres() + " m; else water runs there by itself");
        }
    }

    /** Highest point of the line or the tank's water above the pumps. Worked value: 40 m for ground up to 38 m, water at 40. */
    public Head lift() {
        return new Head(Math.max(ground.highestM(), tankLevelM) - ground.pumpLevelM());
    }
}
