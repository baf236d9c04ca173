package app.ramkeeper.sizing.reference;

import app.ramkeeper.sizing.demand.Demand;
import app.ramkeeper.sizing.demand.DemandRate;
import app.ramkeeper.sizing.demand.DemandTable;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Volume;
import app.ramkeeper.sizing.source.BucketAndWatch;
import app.ramkeeper.sizing.source.Readings;
import app.ramkeeper.sizing.source.RectangularWeir;
import app.ramkeeper.sizing.source.VNotch;
import java.util.Arrays;
import java.util.Map;

/** Evaluators of what there is and what is wanted. */
final class SourceReferenceCases {

    private static final double STANDARD_GRAVITY = 9.80665;
    private static final double US_GALLON_L = 3.785411784;

    /** The rows' words against the table's kind and state, by the rows' own two tables. */
    private static final Map<String, String> USUAL = Map.of(
            "lactating dairy cow, drinking", "dairy cow/in milk",
            "dairy plant washdown per cow", "dairy cow/plant washdown",
            "non-lactating cattle", "cattle/not in milk",
            "calf", "calf/usual",
            "working horse", "horse/working",
            "grazing horse", "horse/grazing",
            "sheep", "sheep/usual",
            "lamb", "lamb/usual",
            "sow", "sow/usual",
            "person, household", "person/household");

    private static final Map<String, String> HOT = Map.of(
            "lactating cow", "dairy cow/in milk, hot weather",
            "cow-calf pair", "cow with calf/hot weather",
            "dry cow", "cattle/dry cow, hot weather",
            "finishing cattle", "cattle/finishing, hot weather",
            "bull", "bull/hot weather",
            "horse", "horse/hot weather",
            "sheep", "sheep/hot weather");

    private SourceReferenceCases() {}

    static Map<String, ReferenceEvaluator> evaluators() {
        return Map.of(
                "vnotch", SourceReferenceCases::vNotch,
                "rect_weir", SourceReferenceCases::weir,
                "bucket", SourceReferenceCases::bucket,
                "float", SourceReferenceCases::meanTime,
                "demand", SourceReferenceCases::demand,
                "demand_lookup", SourceReferenceCases::lookup);
    }

    private static double vNotch(ReferenceCase row) {
        if (row.has("theta_deg")) {
            double angle = row.number("theta_deg");
            return VNotch.flow(row.number("Cd"), 0, angle, row.number("h_m"), row.number("g")) * 60_000;
        }
        VNotch notch = VNotch.rightAngled();
        if (notch.coefficient() != row.number("Ce") || notch.headAddedM() != row.number("kh_m")) {
            throw new AssertionError("Our coefficients differ from " + row);
        }
        return VNotch.flow(notch.coefficient(), notch.headAddedM(), 90, row.number("h_m"), STANDARD_GRAVITY) * 1000;
    }

    private static double weir(ReferenceCase row) {
        if (row.formula().startsWith("ackers")) {
            return RectangularWeir.fullWidth(
                    row.number("b_m"), row.number("h1_m"), row.number("h2_m"), STANDARD_GRAVITY);
        }
        return RectangularWeir.francis(row.number("L_m"), row.number("h_m"), 2) * 1000;
    }

    private static double bucket(ReferenceCase row) {
        Volume volume = Volume.ofLitres(row.number("volume_US_gal") * US_GALLON_L);
        return BucketAndWatch.measure(volume, 0.01, Readings.of(row.number("t_s")), BucketAndWatch.HAND_STOPPED_S)
                .flow()
                .litresPerSecond();
    }

    private static double meanTime(ReferenceCase row) {
        double[] times = Arrays.stream(row.text("times_s").split("\\|"))
                .mapToDouble(Double::parseDouble)
                .toArray();
        return Readings.of(times).mean();
    }

    private static double demand(ReferenceCase row) {
        return switch (row.id()) {
            // gallons stand in for litres on both sides
            case "DF09" -> total(row, "persons", "gal_per_person", "cows", "gal_per_cow");
            case "DF12" -> total(row, "persons", "l_per_person_day");
            case "DF13" -> Flow.ofLitresPerDay(row.number("demand_l_day")).litresPerMinute();
            case "DM11" -> total(row, "dairy_cows", "l_drink", "dairy_cows", "l_washdown", "calves", "l_calf");
            default -> throw ReferenceEvaluator.unknown(row);
        };
    }

    private static double total(ReferenceCase row, String... countsAndRates) {
        Demand.Heads[] heads = new Demand.Heads[countsAndRates.length / 2];
        for (int i = 0; i < heads.length; i++) {
            String who = countsAndRates[2 * i];
            DemandRate rate = new DemandRate(who, "row", row.number(countsAndRates[2 * i + 1]), row.source());
            heads[i] = new Demand.Heads(rate, row.number(who));
        }
        return Demand.of(heads).daily().litresPerDay();
    }

    private static double lookup(ReferenceCase row) {
        String key = switch (row.text("lookup")) {
            case "litres per head per day" -> USUAL.get(row.text("who"));
            case "litres per head per day, hot weather" -> HOT.get(row.text("who"));
            case "WHO quantity for all personal and food hygiene and laundry" -> "person/all hygiene and laundry";
            case "WHO minimum" -> "person/least to get by";
            default -> throw ReferenceEvaluator.unknown(row);
        };
        if (key == null) {
            throw ReferenceEvaluator.unknown(row);
        }
        String[] parts = key.split("/", 2);
        return DemandTable.standard().find(parts[0], parts[1]).orElseThrow().litresPerDay();
    }
}
