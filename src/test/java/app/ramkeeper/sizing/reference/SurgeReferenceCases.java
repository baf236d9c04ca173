package app.ramkeeper.sizing.reference;

import app.ramkeeper.sizing.drive.LengthRule;
import app.ramkeeper.sizing.drive.RamSize;
import app.ramkeeper.sizing.pipe.DeliveryBore;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.surge.Surge;
import java.util.Map;

/** Evaluators of water hammer and of the drive and delivery pipe rules. */
final class SurgeReferenceCases {

    private SurgeReferenceCases() {}

    static Map<String, ReferenceEvaluator> evaluators() {
        return Map.of(
                "water_hammer", SurgeReferenceCases::hammer,
                "drive_pipe", SurgeReferenceCases::drivePipe,
                "delivery_pipe",
                        row -> DeliveryBore.forFlow(Flow.ofLitresPerMinute(row.number("q_l_min")))
                                .value()
                                .millimetres());
    }

    private static double hammer(ReferenceCase row) {
        return switch (row.quantity()) {
            case "a" -> waveSpeed(row);
            case "dp" ->
                Surge.evenlySlowed(row.number("rho"), row.number("L_m"), row.number("V_m_s"), row.number("T_s"))
                        .kilopascals();
            // head: the density cancels
            case "dH" ->
                Surge.joukowsky(1000, row.number("a_m_s"), row.number("V_m_s")).pascals() / (1000 * row.number("g"));
            default -> throw ReferenceEvaluator.unknown(row);
        };
    }

    private static double waveSpeed(ReferenceCase row) {
        double bulk = row.number("K_Pa");
        if (row.inputs().getOrDefault("pipe", "").equals("rigid")) {
            return Surge.waveSpeed(bulk, row.number("rho"), Double.POSITIVE_INFINITY, 1, 1, 1);
        }
        double density = row.has("rho") ? row.number("rho") : bulk / Math.pow(row.number("c0_m_s"), 2);
        return Surge.waveSpeed(bulk, density, row.number("E_Pa"), row.number("D_m"), row.number("e_m"), 1);
    }

    private static double drivePipe(ReferenceCase row) {
        if (row.has("lookup")) {
            return RamSize.table().stream()
                    .filter(size -> Math.abs(size.leastFlow().litresPerMinute() - row.number("Q_min_l_min")) < 1e-9)
                    .filter(size -> Math.abs(size.mostFlow().litresPerMinute() - row.number("Q_max_l_min")) < 1e-9)
                    .findFirst()
                    .orElseThrow()
                    .driveBore()
                    .millimetres();
        }
        LengthRule rule = switch (row.text("rule")) {
            case "L between 150 and 1000 bores" -> LengthRule.BORES_150_TO_1000;
            case "L between 2 and 4 falls (worksheet)" -> LengthRule.FALLS_2_TO_4;
            case "L between 5 and 12 falls (extension)" -> LengthRule.FALLS_5_TO_12;
            default -> throw ReferenceEvaluator.unknown(row);
        };
        Length bore = Length.ofMillimetres(row.has("D_mm") ? row.number("D_mm") : 50);
        Head fall = Head.ofMetres(row.has("H_m") ? row.number("H_m") : 1);
        return switch (row.quantity()) {
            case "L_min" -> rule.shortestM(bore, fall);
            case "L_max" -> rule.longestM(bore, fall);
            default -> throw ReferenceEvaluator.unknown(row);
        };
    }
}
