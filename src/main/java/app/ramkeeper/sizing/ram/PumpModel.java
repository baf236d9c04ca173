package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.quantity.Check;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Require;
import java.util.List;

/**
 * A model of pump with what it may be asked for.
 *
 * @param name for people
 * @param performance its own table or a general curve
 * @param leastDrive least drive flow it beats with
 * @param mostDrive greatest drive flow it takes
 * @param leastFall lowest fall
 * @param mostFall highest fall
 * @param mostLift highest lift, friction of the line counted in
 * @param rating pressure its body and valves bear, gauge
 * @param driveBore bore its drive pipe should have at least
 */
public record PumpModel(
        String name,
        Performance performance,
        Flow leastDrive,
        Flow mostDrive,
        Head leastFall,
        Head mostFall,
        Head mostLift,
        Pressure rating,
        Length driveBore) {

    /** Refuses ranges upside down and a rating or bore of nothing. */
    public PumpModel {
        Require.positive("least drive flow", leastDrive.cubicMetresPerSecond(), "m3/s");
        if (mostDrive.compareTo(leastDrive) < 0) {
            throw new ImpossibleInput(
                    "greatest drive flow", mostDrive.litresPerMinute() + " l/min", "not less than the least");
        }
        Require.positive("lowest fall", leastFall.metres(), "m");
        if (mostFall.compareTo(leastFall) < 0) {
            throw new ImpossibleInput("highest fall", mostFall.metres() + " m", "not less than the lowest");
        }
        Require.positive("highest lift", mostLift.metres(), "m");
        Require.positive("pressure rating", rating.pascals(), "Pa");
        Require.positive("drive bore", driveBore.metres(), "m");
    }

    /** Each limit of the model against a duty. */
    public List<Check> checks(Head fall, Head lift, Flow drive) {
        return List.of(
                Check.atLeast("Drive flow", drive.litresPerMinute(), leastDrive.litresPerMinute(), "l/min"),
                Check.atMost("Drive flow", drive.litresPerMinute(), mostDrive.litresPerMinute(), "l/min"),
                Check.atLeast("Fall", fall.metres(), leastFall.metres(), "m"),
                Check.atMost("Fall", fall.metres(), mostFall.metres(), "m"),
                Check.atMost("Lift", lift.metres(), mostLift.metres(), "m"));
    }

    /** How many of these take a flow: ceil(Q/Qmost). Worked value: 1 for 65 l/min and 65 l/min each. */
    public int numberFor(Flow drive) {
        return (int) Math.ceil(drive.cubicMetresPerSecond() / mostDrive.cubicMetresPerSecond() - 1e-9);
    }
}
