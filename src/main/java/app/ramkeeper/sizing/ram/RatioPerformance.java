package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Require;
import java.util.ArrayList;
import java.util.List;

/**
 * Efficiency by lift ratio alone, as points; the same at every drive flow.
 *
 * <p>The share delivered, efficiency by lift ratio, is drawn as a {@link MonotoneCurve} over one over the ratio: an even
 * efficiency comes out exactly. Worked value: points 0.61 at 6 and 0.44 at 10 give 0.61 at 6.
 */
public final class RatioPerformance implements Performance {

    private final String words;
    private final MonotoneCurve share;

    private RatioPerformance(String words, MonotoneCurve share) {
        this.words = words;
        this.share = share;
    }

    /**
     * From points of D'Aubuisson efficiency by lift/fall.
     *
     * @param words what it is, for notes
     * @param ratios lift/fall, rising, more than 1
     * @param efficiencies 0 to 1, as many; efficiency by ratio must not rise
     */
    public static RatioPerformance of(String words, double[] ratios, double[] efficiencies) {
        int n = ratios.length;
        if (n < 2 || efficiencies.length != n) {
            throw new ImpossibleInput(
                    "points", n + " ratios and " + efficiencies.length + " efficiencies", "2 or more");
        }
        double[] x = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            Require.within("lift ratio", ratios[i], Math.nextUp(1.), 1000, "");
            Require.within("efficiency at lift ratio " + ratios[i], efficiencies[i], 0, 1, "");
            x[n - 1 - i] = 1 / ratios[i];
            y[n - 1 - i] = efficiencies[i] / ratios[i];
        }
        for (int i = 1; i < n; i++) {
            if (y[i] < y[i - 1]) {
                throw new ImpossibleInput(
                        "efficiency at lift ratio " + 1 / x[i], y[i] / x[i], "at least " + y[i - 1] / x[i]);
            }
        }
        return new RatioPerformance(words, MonotoneCurve.through(x, y));
    }

    /** D'Aubuisson efficiency at a lift/fall; 0 above the last point. */
    public double efficiency(double liftRatio) {
        return delivered(liftRatio) * liftRatio;
    }

    private double delivered(double ratio) {
        double inverse = 1 / ratio;
        return inverse < share.low() * (1 - 1e-12) ? 0 : Math.min(inverse, share.at(inverse));
    }

    @Override
    public double deliveredM3s(double fallM, double liftM, double driveM3s) {
        return driveM3s * delivered(liftM / fallM);
    }

    @Override
    public List<Note> notes(double fallM, double liftM, double driveM3s) {
        List<Note> notes = new ArrayList<>();
        double ratio = liftM / fallM;
        if (!share.covers(1 / ratio)) {
            notes.add(Note.outside(words, "lift by fall", ratio, 1 / share.high(), 1 / share.low(), ""));
        }
        return notes;
    }
}
