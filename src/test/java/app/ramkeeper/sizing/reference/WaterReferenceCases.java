package app.ramkeeper.sizing.reference;

import app.ramkeeper.sizing.water.Atmosphere;
import app.ramkeeper.sizing.water.Water;
import java.util.Map;

/** Evaluators of the water and air topics. */
final class WaterReferenceCases {

    private WaterReferenceCases() {}

    static Map<String, ReferenceEvaluator> evaluators() {
        return Map.of(
                "water_properties",
                WaterReferenceCases::property,
                "atmosphere",
                row -> Atmosphere.at(row.number("z_m")).pascals());
    }

    private static double property(ReferenceCase row) {
        Water water = Water.atCelsius(row.number("T_C"));
        return switch (row.quantity()) {
            case "mu" -> water.dynamicViscosity() * 1e3;
            case "rho" -> water.density();
            case "nu" -> water.kinematicViscosity() * 1e6;
            // the row gives the compressibility; the library's own at the row's temperature must agree with its inverse
            case "K=1/kappa_T" -> water.isothermalBulkModulus() / 1e9;
            default -> throw ReferenceEvaluator.unknown(row);
        };
    }
}
