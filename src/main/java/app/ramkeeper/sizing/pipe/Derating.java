package app.ramkeeper.sizing.pipe;

import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Noted;
import app.ramkeeper.sizing.quantity.Numbers;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Temperature;
import java.util.List;

/**
 * How warmth lowers the pressure a pipe may bear; each constant is one standard's factors.
 *
 * <p>The two PE rules disagree (0.74 against 0.84 at 40 degC) because they spread the life in hours differently: take the
 * one that holds where the pipe lies. Between the listed temperatures the factor is on a straight line.
 */
public enum Derating {

    /** PE100 by EN 12201-1 annex A / ISO 13761; from memory. */
    EN_12201_PE100("EN 12201-1 annex A / ISO 13761", new double[] {20, 25, 30, 35, 40}, 1.00, 0.93, 0.87, 0.80, 0.74),

    /** PE100 by AS/NZS 4130 re-rating guidance, read as 160, 160, 150, 143, 135 m for PN 16. */
    AS_NZS_4130_PE100(
            "AS/NZS 4130 re-rating guidance",
            new double[] {20, 25, 30, 35, 40},
            1.0,
            1.0,
            150 / 160.0,
            143 / 160.0,
            135 / 160.0),

    /** PVC-U by EN ISO 1452-2 annex A; from memory. */
    EN_ISO_1452_PVC_U("EN ISO 1452-2 annex A", new double[] {25, 35, 45}, 1.0, 0.80, 0.63),

    /** Steel bears its rating throughout. */
    STEEL("EN 10242 fittings", new double[] {0, 60}, 1.0, 1.0);

    private final String source;
    private final double[] celsius;
    private final double[] factors;

    Derating(String source, double[] celsius, double... factors) {
        this.source = source;
        this.celsius = celsius;
        this.factors = factors;
    }

    /** The standard's name. */
    public String source() {
        return source;
    }

    /** The rule used for a material unless another is asked for. */
    public static Derating of(PipeMaterial material) {
        return switch (material) {
            case PE100 -> EN_12201_PE100;
            case PVC_U -> EN_ISO_1452_PVC_U;
            case GALVANISED_STEEL -> STEEL;
        };
    }

    /**
     * Share of the nominal pressure that is left at a temperature of the pipe wall.
     *
     * <p>1 up to the first listed temperature. Above the last the standard gives none: the factor is 0 with an
     * {@link Note.Code#ASK_ENGINEER} note, so no check can pass by it. Worked value: 0.87 for PE100 by EN 12201 at 30
     * degC.
     */
    public Noted<Double> factor(Temperature temperature) {
        double t = temperature.celsius();
        int last = celsius.length - 1;
        if (t > celsius[last]) {
            return new Noted<>(0.0, List.of(tooWarm(t, celsius[last])));
        }
        if (t <= celsius[0]) {
            return Noted.of(factors[0]);
        }
        int i = 1;
        while (celsius[i] < t) {
            i++;
        }
        double share = (t - celsius[i - 1]) / (celsius[i] - celsius[i - 1]);
        return Noted.of(factors[i - 1] + share * (factors[i] - factors[i - 1]));
    }

    /** Greatest gauge pressure a pipe may bear at a temperature. Worked value: 13.92 bar for PN 16 at 30 degC. */
    public Noted<Pressure> allowed(PipeType type, Temperature temperature) {
        Noted<Double> factor = factor(temperature);
        return new Noted<>(type.rating().times(factor.value()), factor.notes());
    }

    private Note tooWarm(double t, double highest) {
        return new Note(
                Note.Code.ASK_ENGINEER,
                Numbers.sentence(
                        "The pipe wall is at %.0f degC; %s gives no factor above %.0f degC, so it has no rating there. Shade or bury it, or ask an engineer.",
                        t, source, highest));
    }
}
