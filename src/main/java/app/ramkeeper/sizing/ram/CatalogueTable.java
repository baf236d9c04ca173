package app.ramkeeper.sizing.ram;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;

/**
 * A model's table as catalogues have it: entries in any order, some of the grid missing.
 *
 * <p>Points that the catalogue lacks take what less fall, less drive flow or more lift gives: never too much. Worked value:
 * 3 l/min at 2 m of fall stand for 4 m, too, where nothing is stated for that.
 */
public final class CatalogueTable {

    private final List<Entry> entries;
    private final double[] falls;
    private final double[] lifts;
    private final double[] drives;

    /** One entry. */
    public record Entry(double fallM, double liftM, double driveLMin, double deliveredLMin) {}

    /** Of at least one entry. */
    public CatalogueTable(List<Entry> entries) {
        this.entries = List.copyOf(entries);
        falls = axis(Entry::fallM);
        lifts = axis(Entry::liftM);
        drives = axis(Entry::driveLMin);
    }

    private double[] axis(ToDoubleFunction<Entry> value) {
        return entries.stream().mapToDouble(value).distinct().sorted().toArray();
    }

    /** The whole table, for design. */
    public PerformanceTable filled() {
        double[][][] delivered = grid();
        for (int i = 0; i < falls.length; i++) {
            for (int j = lifts.length - 1; j >= 0; j--) {
                for (int k = 0; k < drives.length && lifts[j] > falls[i]; k++) {
                    if (Double.isNaN(delivered[i][j][k])) {
                        delivered[i][j][k] = DoubleStream.of(
                                        i == 0 ? Double.NaN : delivered[i - 1][j][k],
                                        j + 1 == lifts.length ? Double.NaN : delivered[i][j + 1][k],
                                        k == 0 ? Double.NaN : delivered[i][j][k - 1])
                                .filter(value -> !Double.isNaN(value))
                                .max()
                                .orElse(PerformanceTable.BLANK);
                    }
                }
            }
        }
        return PerformanceTable.ofDelivered(falls, lifts, drives, delivered);
    }

    /** Whether a duty lies between entries that are all stated: only there may a reading be judged by the table. */
    public boolean states(double fallM, double liftM, double driveLMin) {
        double[][][] delivered = grid();
        int[] atFall = around(falls, fallM);
        int[] atLift = around(lifts, liftM);
        int[] atDrive = around(drives, driveLMin);
        boolean all = atFall.length * atLift.length * atDrive.length > 0;
        for (int i : atFall) {
            for (int j : atLift) {
                for (int k : atDrive) {
                    all &= !Double.isNaN(delivered[i][j][k]);
                }
            }
        }
        return all;
    }

    private double[][][] grid() {
        double[][][] delivered = new double[falls.length][lifts.length][drives.length];
        for (double[][] byLift : delivered) {
            for (double[] byDrive : byLift) {
                Arrays.fill(byDrive, PerformanceTable.BLANK);
            }
        }
        for (Entry e : entries) {
            delivered[Arrays.binarySearch(falls, e.fallM())][Arrays.binarySearch(lifts, e.liftM())][
                            Arrays.binarySearch(drives, e.driveLMin())] =
                    e.deliveredLMin();
        }
        return delivered;
    }

    /** The entries on both sides of a value; none outside the axis. */
    private static int[] around(double[] axis, double value) {
        int at = Arrays.binarySearch(axis, value);
        if (at >= 0) {
            return new int[] {at};
        }
        int above = -at - 1;
        return above == 0 || above == axis.length ? new int[0] : new int[] {above - 1, above};
    }
}
