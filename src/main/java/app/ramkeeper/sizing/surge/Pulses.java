package app.ramkeeper.sizing.surge;

import app.ramkeeper.sizing.pipe.PipeMaterial;
import app.ramkeeper.sizing.quantity.Numbers;
import app.ramkeeper.sizing.quantity.Require;

/**
 * Beats as pressure cycles on a pipe, and whether its material is fit for them there.
 *
 * @param perYear cycles in a year
 * @param fit whether the material may be used there
 * @param sentence the outcome in a sentence
 */
public record Pulses(double perYear, boolean fit, String sentence) {

    /** Where in the system a pipe is. */
    public enum Place {
        DRIVE_PIPE("as drive pipe"),
        BESIDE_PUMP("beside the pump"),
        BEYOND_VESSEL("in the delivery line beyond the pressure vessel");

        private final String words;

        Place(String words) {
            this.words = words;
        }
    }

    private static final double MINUTES_PER_YEAR = 365.25 * 24 * 60;

    /**
     * Cycles in a year. Worked value: 28.4 million for 60 beats a minute running 90 % of the time.
     *
     * @param beatsPerMinute 0 to 400
     * @param runningShare share of the year that it runs, 0 to 1
     */
    public static double perYear(double beatsPerMinute, double runningShare) {
        Require.within("beat rate", beatsPerMinute, 0, 400, "beats a minute");
        Require.within("running share", runningShare, 0, 1, "");
        return beatsPerMinute * runningShare * MINUTES_PER_YEAR;
    }

    /**
     * Whether a pipe material may be used in a place.
     *
     * <p>PVC-U is refused as drive pipe and beside the pump: tens of millions of pulses a year crack it. Common practice,
     * no source. Worked value: PVC-U beside the pump at 60 a minute is not fit.
     */
    public static Pulses of(PipeMaterial material, Place place, double beatsPerMinute, double runningShare) {
        double cycles = perYear(beatsPerMinute, runningShare);
        boolean fit = material.bearsPulses() || place == Place.BEYOND_VESSEL;
        String sentence = Numbers.sentence(
                fit
                        ? "%s may be used %s: about %.0f million pulses a year."
                        : "%s must not be used %s: about %.0f million pulses a year crack it.",
                material.words(),
                place.words,
                cycles / 1e6);
        return new Pulses(cycles, fit, sentence);
    }
}
