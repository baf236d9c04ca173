package app.ramkeeper.sizing.reference;

import app.ramkeeper.sizing.pipe.Derating;
import app.ramkeeper.sizing.pipe.Fitting;
import app.ramkeeper.sizing.pipe.PipeCatalogue;
import app.ramkeeper.sizing.pipe.PipeType;
import app.ramkeeper.sizing.quantity.Temperature;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Evaluators of the topics about pipes as they are bought; friction and surge have their own files. */
final class PipeReferenceCases {

    private PipeReferenceCases() {}

    static Map<String, ReferenceEvaluator> evaluators() {
        return Map.of(
                "pipe_pressure",
                        row -> PipeCatalogue.nominalPressure(row.number("sigma_MPa"), row.number("SDR"))
                                .bar(),
                "pipe_bore", PipeReferenceCases::bore,
                "pipe_derating", PipeReferenceCases::derating,
                "minor_loss", PipeReferenceCases::minorLoss,
                "friction", FrictionReferenceCases::evaluate);
    }

    private static double bore(ReferenceCase row) {
        PipeType type = row.text("material").equals("PE")
                ? find(PipeCatalogue.pe100(), row.number("OD_mm"), "SDR " + row.text("SDR"))
                : find(
                        PipeCatalogue.galvanisedSteel(),
                        row.number("DN"),
                        row.text("material").replaceFirst(".* ", ""));
        requireSame(row, "OD_mm", type.outside().millimetres());
        requireSame(row, row.has("e_min_mm") ? "e_min_mm" : "t_mm", type.wall().millimetres());
        return type.bore().millimetres();
    }

    private static PipeType find(List<PipeType> types, double nominal, String series) {
        return PipeCatalogue.find(types, (int) nominal, series).orElseThrow();
    }

    private static void requireSame(ReferenceCase row, String key, double ours) {
        if (Math.abs(row.number(key) - ours) > 1e-9) {
            throw new AssertionError(row.id() + ": our catalogue has " + ours + " for " + key + " in " + row);
        }
    }

    private static double derating(ReferenceCase row) {
        Temperature temperature = Temperature.ofCelsius(row.number("T_C"));
        return switch (row.quantity()) {
            case "head" -> 160 * Derating.AS_NZS_4130_PE100.factor(temperature).value();
            case "factor" -> Derating.EN_12201_PE100.factor(temperature).value();
            default -> throw ReferenceEvaluator.unknown(row);
        };
    }

    private static double minorLoss(ReferenceCase row) {
        return switch (row.quantity()) {
            case "h" -> Fitting.headLoss(row.number("K"), row.number("V_m_s"), row.number("g"));
            case "K" -> fitting(row.text("fitting")).coefficient();
            default -> throw ReferenceEvaluator.unknown(row);
        };
    }

    private static Fitting fitting(String words) {
        return switch (words) {
            case "swing check open" -> Fitting.SWING_CHECK_OPEN;
            case "short-radius elbow" -> Fitting.SHORT_ELBOW;
            case "medium-radius elbow" -> Fitting.MEDIUM_ELBOW;
            case "long-radius elbow" -> Fitting.LONG_ELBOW;
            case "45 degree elbow" -> Fitting.ELBOW_45;
            case "close return bend" -> Fitting.RETURN_BEND;
            default -> Fitting.valueOf(words.toUpperCase(Locale.ROOT).replace(' ', '_'));
        };
    }
}
