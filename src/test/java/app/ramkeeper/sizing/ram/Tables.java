package app.ramkeeper.sizing.ram;

/** Invented performance tables. */
public final class Tables {

    public static final double[] FALLS = {2, 4, 8};
    public static final double[] LIFTS = {10, 20, 40, 80};
    public static final double[] DRIVES = {20, 40, 60};

    private Tables() {}

    /** Efficiency falls with lift/fall; blanks where the ratio is above 20. */
    public static PerformanceTable hill() {
        return PerformanceTable.ofEfficiency(FALLS, LIFTS, DRIVES, efficiencies());
    }

    public static double[][][] efficiencies() {
        double[][][] eta = new double[FALLS.length][LIFTS.length][DRIVES.length];
        for (int i = 0; i < FALLS.length; i++) {
            for (int j = 0; j < LIFTS.length; j++) {
                double ratio = LIFTS[j] / FALLS[i];
                for (int k = 0; k < DRIVES.length; k++) {
                    eta[i][j][k] = ratio > 20 ? PerformanceTable.BLANK : 0.75 - 0.015 * ratio - 0.01 * k;
                }
            }
        }
        return eta;
    }

    public static PerformanceTable even(double efficiency) {
        double[][][] eta = new double[FALLS.length][LIFTS.length][DRIVES.length];
        for (double[][] byLift : eta) {
            for (double[] byDrive : byLift) {
                java.util.Arrays.fill(byDrive, efficiency);
            }
        }
        return PerformanceTable.ofEfficiency(FALLS, LIFTS, DRIVES, eta);
    }
}
