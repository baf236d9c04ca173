package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Require;
import java.util.ArrayList;
import java.util.List;

/**
 * A model's own table: delivered flow by fall, lift and drive flow.
 *
 * <p>Between entries it is linear in the fall, in the drive flow and in one over the lift. So an even efficiency comes out
 * exactly, nothing overshoots, and the value rises and falls in every direction as the entries do; a smoother surface
 * cannot promise that in three directions at once. A blank stands for "not stated": nothing is delivered in a cell that
 * touches one. Worked value: with entries 6 l/min at 20 m and 4 l/min at 30 m it gives 4.8 l/min at 25 m.
 */
public final class PerformanceTable implements Performance {

    /** An entry that the maker left empty. */
    public static final double BLANK = Double.NaN;

    private static final double PER_MINUTE = 1 / 60_000.;

    private final double[] falls;
    private final double[] lifts;
    private final double[] drives;
    /** m3/s by fall, lift, drive. */
    private final double[][][] delivered;

    private PerformanceTable(double[] falls, double[] lifts, double[] drives, double[][][] delivered) {
        this.falls = falls;
        this.lifts = lifts;
        this.drives = drives;
        this.delivered = delivered;
    }

    /**
     * From delivered flows.
     *
     * @param fallsM rising, m
     * @param liftsM rising, m, each more than the falls it has entries for
     * @param drivesLMin rising, l/min
     * @param deliveredLMin l/min by fall, lift, drive flow; {@link #BLANK} where not stated
     * @throws ImpossibleInput if the axes do not rise, the counts differ, an entry lifts more energy than its fall gives,
     *     or entries fall with the fall or the drive flow, or rise with the lift
     */
    public static PerformanceTable ofDelivered(
            double[] fallsM, double[] liftsM, double[] drivesLMin, double[][][] deliveredLMin) {
        rising("falls", fallsM, "m");
        rising("lifts", liftsM, "m");
        rising("drive flows", drivesLMin, "l/min");
        double[] drives = new double[drivesLMin.length];
        for (int k = 0; k < drives.length; k++) {
            drives[k] = drivesLMin[k] * PER_MINUTE;
        }
        double[][][] copy = new double[fallsM.length][liftsM.length][drives.length];
        size("falls", deliveredLMin.length, fallsM.length);
        for (int i = 0; i < fallsM.length; i++) {
            size("lifts at fall " + fallsM[i], deliveredLMin[i].length, liftsM.length);
            for (int j = 0; j < liftsM.length; j++) {
                size("drive flows at lift " + liftsM[j], deliveredLMin[i][j].length, drives.length);
                for (int k = 0; k < drives.length; k++) {
                    copy[i][j][k] = entry(deliveredLMin[i][j][k], fallsM[i], liftsM[j], drivesLMin[k]);
                }
            }
        }
        PerformanceTable table = new PerformanceTable(fallsM.clone(), liftsM.clone(), drives, copy);
        table.fillWhereNoDuty();
        table.refuseWrongWay();
        return table;
    }

    /**
     * From D'Aubuisson efficiencies, 0 to 1, laid out as in {@link #ofDelivered}. Worked value: 0.6 at 10 m, 22 m and 65
     * l/min is 17.73 l/min.
     */
    public static PerformanceTable ofEfficiency(
            double[] fallsM, double[] liftsM, double[] drivesLMin, double[][][] efficiency) {
        double[][][] delivered = new double[efficiency.length][][];
        for (int i = 0; i < efficiency.length; i++) {
            delivered[i] = new double[efficiency[i].length][];
            for (int j = 0; j < efficiency[i].length; j++) {
                delivered[i][j] = new double[efficiency[i][j].length];
                for (int k = 0; k < efficiency[i][j].length; k++) {
                    delivered[i][j][k] = efficiency[i][j][k] * drivesLMin[k] * fallsM[i] / liftsM[j];
                }
            }
        }
        return ofDelivered(fallsM, liftsM, drivesLMin, delivered);
    }

    /**
     * From a table of delivered flow per drive flow, the same for all drive flows of a range.
     *
     * @param share delivered by drive flow, by fall and lift
     * @param lowLMin least drive flow, l/min
     * @param highLMin greatest drive flow, l/min
     */
    public static PerformanceTable ofShare(
            double[] fallsM, double[] liftsM, double[][] share, double lowLMin, double highLMin) {
        double[][][] delivered = new double[share.length][][];
        for (int i = 0; i < share.length; i++) {
            delivered[i] = new double[share[i].length][];
            for (int j = 0; j < share[i].length; j++) {
                delivered[i][j] = new double[] {share[i][j] * lowLMin, share[i][j] * highLMin};
            }
        }
        return ofDelivered(fallsM, liftsM, new double[] {lowLMin, highLMin}, delivered);
    }

    @Override
    public double deliveredM3s(double fallM, double liftM, double driveM3s) {
        if (below(fallM, falls[0]) || below(driveM3s, drives[0]) || below(lifts[lifts.length - 1], liftM)) {
            return 0;
        }
        int i = cell(falls, fallM);
        int j = cell(lifts, liftM);
        int k = cell(drives, driveM3s);
        double u = share(falls, i, fallM);
        double v = liftShare(j, liftM);
        double w = share(drives, k, driveM3s);
        double low = plane(delivered[i], j, k, v, w);
        double high = u == 0 ? low : plane(delivered[i + 1], j, k, v, w);
        double value = low + u * (high - low);
        return Double.isNaN(value) ? 0 : value;
    }

    /** Below by more than the rounding of units. */
    private static boolean below(double value, double limit) {
        return value < limit * (1 - 1e-9);
    }

    private static double plane(double[][] byLift, int j, int k, double v, double w) {
        double low = line(byLift[j], k, w);
        return v == 0 ? low : low + v * (line(byLift[j + 1], k, w) - low);
    }

    private static double line(double[] byDrive, int k, double w) {
        return w == 0 ? byDrive[k] : byDrive[k] + w * (byDrive[k + 1] - byDrive[k]);
    }

    private static int cell(double[] axis, double at) {
        int i = 0;
        while (i < axis.length - 2 && at >= axis[i + 1]) {
            i++;
        }
        return i;
    }

    private static double share(double[] axis, int i, double at) {
        if (i + 1 >= axis.length) {
            return 0;
        }
        return Math.min(1, Math.max(0, (at - axis[i]) / (axis[i + 1] - axis[i])));
    }

    /** Share of the way from one lift to the next, measured in one over the lift. */
    private double liftShare(int j, double lift) {
        if (j + 1 >= lifts.length) {
            return 0;
        }
        double from = 1 / lifts[j];
        return Math.min(1, Math.max(0, (from - 1 / lift) / (from - 1 / lifts[j + 1])));
    }

    @Override
    public List<Note> notes(double fallM, double liftM, double driveM3s) {
        List<Note> notes = new ArrayList<>();
        outside(notes, "fall", fallM, falls, 1, "m");
        outside(notes, "lift", liftM, lifts, 1, "m");
        outside(notes, "drive flow", driveM3s, drives, 1 / PER_MINUTE, "l/min");
        if (notes.isEmpty() && deliveredM3s(fallM, liftM, driveM3s) == 0) {
            notes.add(new Note(
                    Note.Code.OUTSIDE_RANGE, "The performance table has a blank at this duty: nothing is promised."));
        }
        return notes;
    }

    private static void outside(
            List<Note> notes, String input, double value, double[] axis, double unitFactor, String unit) {
        double low = axis[0];
        double high = axis[axis.length - 1];
        if (below(value, low) || below(high, value)) {
            notes.add(Note.outside(
                    "the performance table", input, value * unitFactor, low * unitFactor, high * unitFactor, unit));
        }
    }

    private static double entry(double deliveredLMin, double fall, double lift, double drive) {
        if (Double.isNaN(deliveredLMin)) {
            return BLANK;
        }
        double most = drive * fall / lift;
        if (!(deliveredLMin >= 0 && deliveredLMin <= most * (1 + 1e-9)) || lift <= fall) {
            throw new ImpossibleInput(
                    where(fall, lift, drive),
                    deliveredLMin + " l/min",
                    lift <= fall ? "a blank, the lift is not above the fall" : "0 to " + most + " l/min");
        }
        return deliveredLMin * PER_MINUTE;
    }

    /** Where the lift is not above the fall no maker can state anything; the next duty that exists stands in. */
    private void fillWhereNoDuty() {
        for (int i = 0; i < falls.length; i++) {
            for (int j = lifts.length - 1; j >= 0; j--) {
                for (int k = 0; k < drives.length && lifts[j] <= falls[i]; k++) {
                    double lessFall = i > 0 ? delivered[i - 1][j][k] : BLANK;
                    double moreLift = j + 1 < lifts.length ? delivered[i][j + 1][k] : BLANK;
                    delivered[i][j][k] = Double.isNaN(lessFall)
                            ? moreLift
                            : Double.isNaN(moreLift) ? lessFall : Math.max(lessFall, moreLift);
                }
            }
        }
    }

    private void refuseWrongWay() {
        for (int i = 0; i < falls.length; i++) {
            for (int j = 0; j < lifts.length; j++) {
                for (int k = 0; k < drives.length; k++) {
                    if (i > 0) {
                        atLeast(i, j, k, delivered[i - 1][j][k], "less fall");
                    }
                    if (j + 1 < lifts.length) {
                        atLeast(i, j, k, delivered[i][j + 1][k], "more lift");
                    }
                    if (k > 0) {
                        atLeast(i, j, k, delivered[i][j][k - 1], "less drive flow");
                    }
                }
            }
        }
    }

    /** Not below its neighbour; a blank counts as the least of all. */
    private void atLeast(int i, int j, int k, double neighbour, String of) {
        double own = delivered[i][j][k];
        if (!Double.isNaN(neighbour) && !(own >= neighbour * (1 - 1e-12))) {
            throw new ImpossibleInput(
                    where(falls[i], lifts[j], drives[k] / PER_MINUTE),
                    Double.isNaN(own) ? "blank" : own / PER_MINUTE + " l/min",
                    "at least the " + neighbour / PER_MINUTE + " l/min of " + of);
        }
    }

    private static String where(double fall, double lift, double drive) {
        return "delivered flow at fall " + fall + " m, lift " + lift + " m, drive flow " + drive + " l/min";
    }

    private static void rising(String axis, double[] values, String unit) {
        if (values.length == 0) {
            throw new ImpossibleInput(axis, "empty", "one or more");
        }
        for (int i = 0; i < values.length; i++) {
            Require.positive(axis, values[i], unit);
            if (i > 0 && values[i] <= values[i - 1]) {
                throw new ImpossibleInput(axis, values[i], "more than " + values[i - 1] + " " + unit);
            }
        }
    }

    private static void size(String axis, int given, int needed) {
        if (given != needed) {
            throw new ImpossibleInput("entries by " + axis, given, "just " + needed);
        }
    }
}
