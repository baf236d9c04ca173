package app.ramkeeper.visits.record;

import app.ramkeeper.fleet.BaselineDetails;
import app.ramkeeper.fleet.ConfigurationCard;
import app.ramkeeper.shared.Unit;
import app.ramkeeper.visits.MeasuredAt;
import app.ramkeeper.visits.Quantity;
import app.ramkeeper.visits.RecordVisit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Asks about readings that are hardly possible. It never refuses: who answers "yes, as read" is believed.
 *
 * <p>The bounds are common practice without a source, but for one: what the falling water can pay, q h &lt;= Q H, is
 * conservation of energy.
 */
final class Plausible {

    private static final double WATER = 9_806.65; // Pa for each metre of water of 1000 kg/m3

    private final List<RecordVisit.Reading> readings;
    private final @Nullable ConfigurationCard layout;

    /** All readings of one install at one visit, with the configuration that was in force. */
    Plausible(List<RecordVisit.Reading> readings, @Nullable ConfigurationCard layout) {
        this.readings = readings;
        this.layout = layout;
    }

    /** What to ask about a reading, if anything. */
    Optional<String> question(RecordVisit.Reading reading) {
        double si = reading.value().si();
        String sentence = switch (reading.quantity()) {
            case DRIVE_FLOW -> flow(si, baseline() == null ? null : baseline().driveFlowSi(), 1, 3_000);
            case DELIVERED_FLOW -> delivered(si);
            case WASTE_FLOW, SOURCE_FLOW -> flow(si, null, 0, 20_000);
            case BEAT_RATE -> outside(si, Unit.PER_MINUTE, 20, 150, "A ram beats some 40 to 90 times a minute.");
            case DELIVERY_PRESSURE -> pressure(si);
            case PRE_CHARGE -> preCharge(si);
            case FALL -> fall(si);
            case WATER_TEMPERATURE -> outside(si, Unit.CELSIUS, 0, 30, "Water in hill country is seldom so.");
        };
        return Optional.ofNullable(sentence);
    }

    /** Nothing arrives although the pump beats: the float or a valve may be shut, and pressure climbs. */
    boolean shutAtTheEnd() {
        Double delivered = value(Quantity.DELIVERED_FLOW);
        Double beat = value(Quantity.BEAT_RATE);
        return delivered != null && delivered == 0 && beat != null && beat > 0;
    }

    private @Nullable String delivered(double si) {
        if (si == 0) {
            return null;
        }
        Double drive = value(Quantity.DRIVE_FLOW);
        if (drive != null && si >= drive) {
            return "More water arrives than enters the pump. Check both values and their units.";
        }
        Double fall = layout == null ? null : layout.details().fallM();
        Double lift = layout == null ? null : layout.details().liftM();
        if (drive != null && drive > 0 && fall != null && lift != null) {
            double efficiency = si * lift / (drive * fall);
            if (efficiency > 0.85) {
                return String.format(
                        Locale.ROOT,
                        "This would be an efficiency of %.0f %%; rams reach 50 to 70. Check both flows.",
                        100 * efficiency);
            }
        }
        return flow(si, baseline() == null ? null : baseline().deliveredFlowSi(), 0.02, 1_000);
    }

    private static @Nullable String flow(double si, @Nullable Double baseline, double least, double most) {
        double lMin = Unit.LITRE_PER_MINUTE.fromSi(si);
        if (baseline != null && (si > 3 * baseline || si < baseline / 5)) {
            return String.format(
                    Locale.ROOT,
                    "%.3g l/min is far from the baseline of %.3g l/min. Check value and unit.",
                    lMin,
                    Unit.LITRE_PER_MINUTE.fromSi(baseline));
        }
        return lMin < least || lMin > most ? "This flow is unusual for a ram. Check value and unit." : null;
    }

    private @Nullable String pressure(double si) {
        Double lift = layout == null ? null : layout.details().liftM();
        if (lift == null) {
            return outside(si, Unit.BAR, 0.2, 25, "10 m of lift make about 1 bar.");
        }
        double still = lift * WATER;
        return si < 0.7 * still || si > 2 * still
                ? String.format(
                        Locale.ROOT,
                        "A lift of %.0f m makes about %.1f bar at rest. Check the gauge.",
                        lift,
                        Unit.BAR.fromSi(still))
                : null;
    }

    private @Nullable String preCharge(double si) {
        Double lift = layout == null ? null : layout.details().liftM();
        Double gauge = value(Quantity.DELIVERY_PRESSURE);
        Double still = gauge != null ? gauge : lift == null ? null : lift * WATER;
        return still != null && si >= still
                ? "A pre-charge at or above the delivery pressure keeps water out of the vessel. Was the vessel empty of"
                        + " water and not under pressure?"
                : null;
    }

    private @Nullable String fall(double si) {
        Double fall = layout == null ? null : layout.details().fallM();
        return fall != null && (si > 1.5 * fall || si < fall / 1.5)
                ? String.format(Locale.ROOT, "The register says %.1f m. Was something moved?", fall)
                : null;
    }

    private static @Nullable String outside(double si, Unit unit, double least, double most, String sentence) {
        double value = unit.fromSi(si);
        return value < least || value > most ? sentence + " Check the value." : null;
    }

    private @Nullable BaselineDetails baseline() {
        return layout == null ? null : layout.baseline();
    }

    private @Nullable Double value(Quantity quantity) {
        return readings.stream()
                .filter(r -> r.quantity() == quantity && r.place() != MeasuredAt.SOURCE)
                .map(r -> r.value().si())
                .findFirst()
                .orElse(null);
    }
}
