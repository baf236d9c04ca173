package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.quantity.Note;
import java.util.ArrayList;
import java.util.List;

/**
 * Published efficiencies by lift ratio, for a pump without figures of its own.
 *
 * <p>They come from the nineteenth century and disagree; whichever is used is named in the notes. The pocket book's is
 * the careful one below a lift ratio of about 8 and is what this library takes by default.
 */
public enum EfficiencyCurve implements Performance {

    /**
     * Eytelwein's 1.12 - 0.2 sqrt(r), r the lift above the SOURCE by the fall.
     *
     * <p>Source: a German hydraulic-engineering handbook (scan goobi.tib.eu 1888297549, pp. 321-322). With r so defined
     * it is taken as Rankine's efficiency; the choice is ours. Range r 1 to 15: below it the efficiency stays at 0.92, above
     * it nothing is promised. Worked value: 0.72 at r 4.
     */
    EYTELWEIN("Eytelwein's formula", 1, 15) {
        @Override
        public double efficiency(double ratio) {
            return ratio > 15 * (1 + 1e-12) ? 0 : 1.12 - 0.2 * Math.sqrt(Math.max(1, ratio));
        }

        @Override
        public double ratio(double fallM, double liftM) {
            return (liftM - fallM) / fallM;
        }

        @Override
        public double deliveredM3s(double fallM, double liftM, double driveM3s) {
            double ratio = ratio(fallM, liftM);
            double efficiency = efficiency(ratio);
            return driveM3s * efficiency / (ratio + efficiency);
        }
    },

    /**
     * A pocket book's table of D'Aubuisson efficiency by lift/fall, 4 to 26.
     *
     * <p>Source: Building Trades Pocketbook, Hydraulic Rams table (public domain; copy at chestofbooks.com). Entries at
     * 4, 8, 14 and 20 are from memory. Drawn through by {@link RatioPerformance}. Worked value: 0.61 at 6.
     */
    POCKET_BOOK("the pocket book's table", 4, 26) {
        @Override
        public double efficiency(double ratio) {
            return TABLE.efficiency(ratio);
        }

        @Override
        public double ratio(double fallM, double liftM) {
            return liftM / fallM;
        }

        @Override
        public double deliveredM3s(double fallM, double liftM, double driveM3s) {
            return TABLE.deliveredM3s(fallM, liftM, driveM3s);
        }
    };

    private static final RatioPerformance TABLE = RatioPerformance.of(
            "the pocket book's table",
            new double[] {4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26},
            new double[] {0.72, 0.61, 0.52, 0.44, 0.37, 0.31, 0.25, 0.19, 0.14, 0.09, 0.04, 0});

    private final String words;
    private final double low;
    private final double high;

    EfficiencyCurve(String words, double low, double high) {
        this.words = words;
        this.low = low;
        this.high = high;
    }

    /** Efficiency at the curve's own lift ratio and of its own definition. */
    public abstract double efficiency(double ratio);

    /** The lift ratio as the curve means it. */
    public abstract double ratio(double fallM, double liftM);

    /** Name in sentences. */
    public String words() {
        return words;
    }

    @Override
    public List<Note> notes(double fallM, double liftM, double driveM3s) {
        List<Note> notes = new ArrayList<>();
        notes.add(new Note(
                Note.Code.ASSUMED, "The efficiency is " + words + ", a general figure, not one of this pump model."));
        double ratio = ratio(fallM, liftM);
        if (ratio < low || ratio > high) {
            notes.add(Note.outside(words, "lift ratio", ratio, low, high, ""));
        }
        return notes;
    }
}
