package app.ramkeeper.sizing.reference;

import app.ramkeeper.sizing.drive.RamSize;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.ram.CycleClosedForms;
import app.ramkeeper.sizing.ram.Efficiency;
import app.ramkeeper.sizing.ram.EfficiencyCurve;
import app.ramkeeper.sizing.ram.PerformanceTable;
import app.ramkeeper.sizing.ram.PumpModel;
import app.ramkeeper.sizing.ram.Setups;
import app.ramkeeper.sizing.ram.ValveSweep;
import java.util.Map;

/** Evaluators of the ram topics. */
final class RamReferenceCases {

    private static final double LITRES_PER_DAY = 1440;

    private RamReferenceCases() {}

    static Map<String, ReferenceEvaluator> evaluators() {
        return Map.of(
                "delivered_flow", RamReferenceCases::delivered,
                "delivered_flow_table", RamReferenceCases::perDay,
                "efficiency", RamReferenceCases::efficiency,
                "efficiency_curve", RamReferenceCases::curve,
                "cycle", RamReferenceCases::cycle,
                "multi",
                        row -> taking(row.number("Q_ram_max_l_min"))
                                .numberFor(Flow.ofLitresPerMinute(row.number("Q_l_min"))));
    }

    private static double delivered(ReferenceCase row) {
        return switch (row.quantity()) {
            // any unit of flow and of height in, the same out
            case "q" ->
                Efficiency.delivered(
                                row.number("eta"),
                                Flow.ofLitresPerMinute(row.number("Q_l_min")),
                                new Head(row.number("H_m")),
                                new Head(row.number("h_m")))
                        .litresPerMinute();
            case "q_theoretical" ->
                Efficiency.delivered(
                                row.number("eta"),
                                Flow.ofLitresPerMinute(row.number("Q_gal")),
                                new Head(row.number("H_ft")),
                                new Head(row.number("h_ft")))
                        .litresPerMinute();
            case "source_flow" ->
                Flow.ofLitresPerDay(row.number("source_l_day")).litresPerMinute();
            case "Q_required" ->
                Efficiency.driveForShare(
                                row.number("table_l_day_per_l_min") / LITRES_PER_DAY,
                                Flow.ofLitresPerDay(row.number("demand_l_day")))
                        .litresPerMinute();
            case "implied_eta" ->
                Efficiency.dAubuisson(
                        Flow.ofLitresPerMinute(row.number("Q")),
                        Flow.ofLitresPerMinute(row.number("Q") / 7),
                        new Head(1),
                        new Head(row.number("h_over_H")));
            case "Q_total" ->
                Efficiency.driveForShare(row.number("volumetric_eta"), Flow.ofLitresPerMinute(row.number("q_l_min")))
                        .litresPerMinute();
            default -> throw ReferenceEvaluator.unknown(row);
        };
    }

    /** Through a performance table of one entry with the row's efficiency. */
    private static double perDay(ReferenceCase row) {
        double drive = row.number("S_l_min");
        return PerformanceTable.ofEfficiency(
                        new double[] {row.number("F_m")},
                        new double[] {row.number("L_m")},
                        new double[] {drive},
                        new double[][][] {{{row.number("E")}}})
                .at(new Head(row.number("F_m")), new Head(row.number("L_m")), Flow.ofLitresPerMinute(drive))
                .value()
                .delivered()
                .litresPerDay();
    }

    private static double efficiency(ReferenceCase row) {
        Flow drive = Flow.ofLitresPerSecond(row.number("Q_l_s"));
        Flow delivered = Flow.ofLitresPerSecond(row.number("q_l_s"));
        Head fall = new Head(row.number("H_m"));
        Head lift = new Head(row.number("h_m"));
        return switch (row.quantity()) {
            case "eta_A" -> Efficiency.dAubuisson(drive, delivered, fall, lift);
            case "eta_R" -> Efficiency.rankine(drive, delivered, fall, lift);
            default -> throw ReferenceEvaluator.unknown(row);
        };
    }

    private static double curve(ReferenceCase row) {
        return row.has("r")
                ? EfficiencyCurve.EYTELWEIN.efficiency(row.number("r"))
                : 100 * EfficiencyCurve.POCKET_BOOK.efficiency(row.number("h_over_H"));
    }

    private static double cycle(ReferenceCase row) {
        if (row.quantity().equals("beats_low")) {
            return beatsInService();
        }
        CycleClosedForms forms = new CycleClosedForms(
                new Length(row.number("L_m")),
                new Length(row.number("D_m")),
                new Head(row.number("H_m")),
                row.number("C"),
                row.number("g"));
        return switch (row.quantity()) {
            case "V_max" -> forms.greatestVelocity();
            case "t_accel" -> forms.gatherSeconds(row.number("Vc_m_s"));
            case "waste_per_beat" -> forms.waste(row.number("Vc_m_s")).litres();
            case "pumped_per_beat_ideal" ->
                forms.delivered(row.number("Vc_m_s"), new Head(row.number("h_m")))
                        .litres();
            case "t_delivery" -> forms.deliverySeconds(row.number("Vc_m_s"), new Head(row.number("h_m")));
            default -> throw ReferenceEvaluator.unknown(row);
        };
    }

    /** Beat of our invented two-inch pump, set for the most drive flow that the handbook's table gives its bore. */
    private static double beatsInService() {
        Flow most = RamSize.table().stream()
                .filter(size -> Math.abs(size.driveBore().millimetres() - 50) < 1e-9)
                .findFirst()
                .orElseThrow()
                .mostFlow();
        return ValveSweep.over(Setups.hill(), 0.002, 0.009, 15, most)
                .best()
                .orElseThrow()
                .cycle()
                .beatsPerMinute();
    }

    private static PumpModel taking(double mostLMin) {
        return new PumpModel(
                "any",
                EfficiencyCurve.POCKET_BOOK,
                Flow.ofLitresPerMinute(mostLMin / 3),
                Flow.ofLitresPerMinute(mostLMin),
                new Head(1),
                new Head(10),
                new Head(100),
                Pressure.ofBar(16),
                Length.ofMillimetres(50));
    }
}
