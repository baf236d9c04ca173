package app.ramkeeper.sizing.drive;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Volume;
import java.util.List;

/**
 * A line of the handbook's table of ram sizes, for a fall of 1.5 to 3 m and a lift of 5 to 7 times the fall.
 *
 * <p>Source: German hydraulic-engineering handbook of about 1900, pages 321-322 (scan in goobi.tib.eu, 1888297549). The
 * last two lines have the same bore of 80 mm for different flows; by the mean velocity of its neighbours the last would
 * be nearer 100 mm, so it may be a slip of the print.
 *
 * @param leastFlow of the drive flow
 * @param mostFlow of the drive flow
 * @param driveBore bore of the drive pipe
 * @param deliveryBore bore of the delivery pipe at the pump
 * @param airVessel volume of the air vessel
 */
public record RamSize(Flow leastFlow, Flow mostFlow, Length driveBore, Length deliveryBore, Volume airVessel) {

    private static final List<RamSize> TABLE = List.of(
            size(3, 7, 19, 9, 2.5),
            size(6, 15, 25, 13, 3.5),
            size(11, 26, 30, 16, 6),
            size(22, 53, 50, 19, 10),
            size(45, 94, 65, 25, 20),
            size(80, 130, 80, 30, 45),
            size(120, 200, 80, 40, 95));

    /** The whole table, smallest first. */
    public static List<RamSize> table() {
        return TABLE;
    }

    /**
     * Lines whose range holds a drive flow; ranges overlap, so there may be two.
     *
     * <p>Worked value: 50 l/min has the bores 50 and 65 mm.
     *
     * @return empty for less than 3 or more than 200 l/min: the table says nothing there
     */
    public static List<RamSize> forDriveFlow(Flow drive) {
        return TABLE.stream()
                .filter(size -> size.leastFlow.compareTo(drive) <= 0 && size.mostFlow.compareTo(drive) >= 0)
                .toList();
    }

    private static RamSize size(double least, double most, double drive, double delivery, double vessel) {
        return new RamSize(
                Flow.ofLitresPerMinute(least),
                Flow.ofLitresPerMinute(most),
                Length.ofMillimetres(drive),
                Length.ofMillimetres(delivery),
                Volume.ofLitres(vessel));
    }
}
