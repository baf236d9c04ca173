package app.ramkeeper.sizing.drive;

import app.ramkeeper.sizing.pipe.PipeMaterial;
import app.ramkeeper.sizing.pipe.PipeType;
import app.ramkeeper.sizing.quantity.Check;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.quantity.Verdict;
import app.ramkeeper.sizing.surge.Anchorage;
import app.ramkeeper.sizing.surge.DeadHead;
import app.ramkeeper.sizing.surge.Surge;
import app.ramkeeper.sizing.water.Ambient;
import java.util.ArrayList;
import java.util.List;

/**
 * A drive pipe as planned, to be held against the rules.
 *
 * @param type pipe from the catalogue
 * @param length from intake to pump, more than 0
 * @param fall source level above the waste valve, more than 0
 * @param anchorage how it is held
 */
public record DrivePipe(PipeType type, Length length, Head fall, Anchorage anchorage) {

    /** Mean velocity that a drive pipe should not pass, m/s; common practice, no source. */
    public static final double MEAN_VELOCITY_LIMIT = 1.0;

    /** Above {@link DriveWall#LARGEST_THREAD} pipe is flanged or welded. */
    private static final Length NO_THREAD = new Length(0);

    /** Refuses a pipe without length or fall. */
    public DrivePipe {
        Require.positive("drive pipe length", length.metres(), "m");
        Require.positive("fall", fall.metres(), "m");
    }

    /** Mean velocity of the drive flow, m/s. Worked value: 0.45 for 60 l/min in DN 50 medium. */
    public double meanVelocity(Flow drive) {
        double bore = type.bore().metres();
        return drive.cubicMetresPerSecond() / (Math.PI / 4 * bore * bore);
    }

    /** Speed of a pressure wave in it, m/s ({@link Surge#waveSpeed}). Worked value: 1348 for DN 50 medium, water of 10 degC. */
    public double waveSpeed(Ambient ambient) {
        return Surge.waveSpeed(ambient.water(), type, anchorage);
    }

    /**
     * Gauge pressure at the waste valve that its sudden closing may reach: fall plus full surge.
     *
     * <p>While the delivery is open the delivery valve takes most of it; this is what pipe and pump must bear at worst.
     * Worked value: 13.7 bar for 1 m/s and 2 m of fall in DN 50 medium at 10 degC.
     *
     * @param closingVelocity velocity when the waste valve shuts, m/s
     */
    public Pressure peak(double closingVelocity, Ambient ambient) {
        return DeadHead.pressure(fall, closingVelocity, waveSpeed(ambient), ambient);
    }

    /**
     * Every rule applied, each with its number: length, bore for the flow ({@link #notes} says where the table for it has
     * nothing), velocity, pressure, wall, material.
     *
     * @param drive drive flow of this one pump
     * @param closingVelocity velocity when the waste valve shuts, m/s
     * @param byFall which of the disagreeing rules by fall the office goes by
     */
    public List<Check> checks(Flow drive, double closingVelocity, LengthRule byFall, Ambient ambient) {
        List<Check> checks = new ArrayList<>();
        checks.add(LengthRule.BORES_150_TO_1000.check(length, type.bore(), fall));
        if (byFall != LengthRule.BORES_150_TO_1000) {
            checks.add(byFall.check(length, type.bore(), fall));
        }
        checks.add(Check.atLeast("Drive pipe length, at least the fall", length.metres(), fall.metres(), "m"));
        checks.add(Check.atMost("Mean velocity in the drive pipe", meanVelocity(drive), MEAN_VELOCITY_LIMIT, "m/s")
                .because("Common practice."));
        bore(drive, checks);
        Pressure peak = peak(closingVelocity, ambient);
        checks.add(Check.atMost(
                "Surge in the drive pipe", peak.bar(), type.rating().bar(), "bar"));
        if (type.material() == PipeMaterial.GALVANISED_STEEL) {
            checks.add(wall(peak));
        }
        checks.add(material());
        return checks;
    }

    /** What the checks are silent on: the bore where the handbook's table has no line for the drive flow. */
    public List<Note> notes(Flow drive) {
        List<RamSize> table = RamSize.table();
        return RamSize.forDriveFlow(drive).isEmpty()
                ? List.of(Note.outside(
                        "the handbook's table of drive bores",
                        "drive flow",
                        drive.litresPerMinute(),
                        table.get(0).leastFlow().litresPerMinute(),
                        table.get(table.size() - 1).mostFlow().litresPerMinute(),
                        "l/min"))
                : List.of();
    }

    private void bore(Flow drive, List<Check> checks) {
        List<RamSize> sizes = RamSize.forDriveFlow(drive);
        if (!sizes.isEmpty()) {
            // the table is of nominal bores; real ones are some 10 % either side
            double least = sizes.get(0).driveBore().millimetres() * 0.9;
            checks.add(Check.atLeast(
                    "Bore for the drive flow, handbook table less a tenth",
                    type.bore().millimetres(),
                    least,
                    "mm"));
        }
    }

    private Check wall(Pressure peak) {
        Length thread = type.nominal() > DriveWall.LARGEST_THREAD ? NO_THREAD : DriveWall.threadDepth(type.nominal());
        Length needed = DriveWall.wallFor(peak, type.outside(), DriveWall.ALLOWED_STRESS, thread);
        return Check.atLeast(
                "Wall of the drive pipe under its thread", type.wall().millimetres(), needed.millimetres(), "mm");
    }

    private Check material() {
        boolean fit = type.material().bearsPulses();
        return new Check(
                "Material of the drive pipe",
                !fit ? Verdict.FAILS : type.material() == PipeMaterial.PE100 ? Verdict.CLOSE : Verdict.HOLDS,
                type.material().elasticity() / 1e9,
                PipeMaterial.GALVANISED_STEEL.elasticity() / 1e9,
                "GPa",
                fit
                        ? "The stiffer the drive pipe, the less of each beat it swallows; steel is the rule."
                        : type.material().words() + " cracks under the beats and must not be drive pipe.");
    }
}
