package app.ramkeeper.sizing.reference;

import app.ramkeeper.sizing.pipe.Friction;
import app.ramkeeper.sizing.pipe.PublishedFriction;

/** Evaluator of the friction topic: the row's formula where it names one, else the library's own law. */
final class FrictionReferenceCases {

    private static final double STANDARD_GRAVITY = 9.80665;

    private FrictionReferenceCases() {}

    static double evaluate(ReferenceCase row) {
        return switch (row.quantity()) {
            case "f" -> factor(row);
            case "V" -> Friction.velocity(row.number("Q_m3_s"), row.number("D_m"));
            case "hL" -> headLoss(row);
            case "dp" -> pressureLoss(row) / 1000;
            case "power" -> pressureLoss(row) * row.number("Q_m3_s");
            case "D" ->
                PublishedFriction.swameeJainBore(
                        row.number("Q_m3_s"),
                        row.number("hf_m"),
                        row.number("L_m"),
                        row.number("eps"),
                        row.number("nu_m2_s"),
                        row.number("g"));
            default -> throw ReferenceEvaluator.unknown(row);
        };
    }

    private static double factor(ReferenceCase row) {
        double rough = row.has("rel_rough") ? row.number("rel_rough") : 0;
        String formula = row.formula();
        if (formula.equals("colebrook") && row.has("D_m")) {
            double re = Friction.velocity(row.number("Q_m3_s"), row.number("D_m")) * row.number("D_m") / nu(row);
            return Friction.factor(re, row.number("eps_m") / row.number("D_m"));
        }
        return switch (formula) {
            case "colebrook", "64/Re" -> Friction.factor(row.number("Re"), rough);
            case "churchill1977" -> PublishedFriction.churchill(row.number("Re"), rough);
            case "haaland" -> PublishedFriction.haaland(row.number("Re"), rough);
            case "blasius 0.3164/Re^0.25" -> PublishedFriction.blasius(row.number("Re"));
            case "von Karman fully rough" -> PublishedFriction.fullyRough(rough);
            case "dunlop" -> PublishedFriction.dunlop(row.number("Re"), rough);
            default -> throw ReferenceEvaluator.unknown(row);
        };
    }

    private static double headLoss(ReferenceCase row) {
        if (row.formula().startsWith("hazen_williams")) {
            return PublishedFriction.hazenWilliams(
                    row.number("Q_m3_s"), row.number("D_m"), row.number("L_m"), row.number("C"));
        }
        if (row.has("V_ft_s")) {
            double bore = row.number("D_in") / 12;
            double flow = row.number("V_ft_s") * Math.PI / 4 * bore * bore;
            // Darcy-Weisbach is free of units: feet in, feet out
            return Friction.headLoss(
                    flow,
                    bore,
                    row.number("L_ft"),
                    row.number("eps_ft"),
                    0,
                    row.number("nu_ft2_s"),
                    row.number("g_ft_s2"));
        }
        return headLoss(row, row.number("g"));
    }

    private static double pressureLoss(ReferenceCase row) {
        return headLoss(row, STANDARD_GRAVITY) * row.number("rho") * STANDARD_GRAVITY;
    }

    private static double headLoss(ReferenceCase row, double g) {
        return Friction.headLoss(
                row.number("Q_m3_s"), row.number("D_m"), row.number("L_m"), row.number("eps_m"), 0, nu(row), g);
    }

    private static double nu(ReferenceCase row) {
        return row.number("mu") / row.number("rho");
    }
}
