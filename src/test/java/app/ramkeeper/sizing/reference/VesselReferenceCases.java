package app.ramkeeper.sizing.reference;

import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Volume;
import app.ramkeeper.sizing.vessel.PreCharge;
import app.ramkeeper.sizing.vessel.PreChargeRule;
import app.ramkeeper.sizing.vessel.VesselKind;
import app.ramkeeper.sizing.vessel.VesselVolume;
import app.ramkeeper.sizing.water.Ambient;
import java.util.Map;
import java.util.Optional;

/** Evaluators of the vessel topic. */
final class VesselReferenceCases {

    private static final double PSI = 6894.757;

    private VesselReferenceCases() {}

    static Map<String, ReferenceEvaluator> evaluators() {
        return Map.of("vessel", row -> switch (row.quantity()) {
            case "drawdown" -> drawdown(row);
            case "precharge" -> preCharge(row);
            case "p" ->
                Head.ofMetres(row.number("h_m"))
                        .pressure(row.number("rho"), row.number("g"))
                        .pascals();
            default -> throw ReferenceEvaluator.unknown(row);
        });
    }

    private static double drawdown(ReferenceCase row) {
        // gallons stand in for litres on both sides
        return VesselVolume.drawdown(
                        Volume.ofLitres(row.number("V_gal")),
                        psi(row, "pre_psi"),
                        psi(row, "cut_in_psi"),
                        psi(row, "cut_out_psi"),
                        psi(row, "patm_psi"))
                .litres();
    }

    private static Pressure psi(ReferenceCase row, String key) {
        return new Pressure(row.number(key) * PSI);
    }

    private static double preCharge(ReferenceCase row) {
        return PreCharge.advise(
                        Head.ofMetres(row.number("static_head_m")),
                        VesselKind.BLADDER,
                        Pressure.ofBar(10),
                        Optional.empty(),
                        PreChargeRule.usual(),
                        Ambient.standard())
                .charge()
                .orElseThrow()
                .bar();
    }
}
