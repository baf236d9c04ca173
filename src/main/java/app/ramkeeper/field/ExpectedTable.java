package app.ramkeeper.field;

import app.ramkeeper.sizing.design.AsBuilt;
import app.ramkeeper.sizing.design.ExpectedReadings;
import app.ramkeeper.sizing.design.Factors;
import app.ramkeeper.sizing.pipe.Friction;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.NotConverged;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Uncertain;
import app.ramkeeper.sizing.ram.CatalogueTable;
import app.ramkeeper.sizing.ram.EfficiencyCurve;
import app.ramkeeper.sizing.ram.LineLoss;
import app.ramkeeper.sizing.ram.Performance;
import app.ramkeeper.sizing.ram.PumpModel;
import app.ramkeeper.sizing.water.Ambient;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What an install should deliver for a range of drive flows, by the sizing library: the phone looks up between the rows. */
final class ExpectedTable {

    /** Shares by which fall and lift of the register may be off; our own judgement. */
    private static final double FALL_SHARE = 0.03;

    private static final double LIFT_SHARE = 0.02;

    /** Roughness of a plastic delivery pipe, m; common practice, no source. */
    private static final double ROUGHNESS_M = 1e-5;

    private static final double[] SHARES = {0.3, 0.5, 0.7, 0.85, 1, 1.15, 1.4, 1.7};

    private ExpectedTable() {}

    /** What is known of an install, in the register's units. */
    record Setup(
            double fallM,
            double liftM,
            double driveLMin,
            @Nullable Double pipeBoreMm,
            @Nullable Double pipeLengthM,
            @Nullable Double altitudeM,
            List<CatalogueTable.Entry> model) {}

    /**
     * A row, in SI.
     *
     * @param u standard uncertainty of the delivered flow
     * @param runningPa mean pressure at the delivery side
     */
    record Row(double drive, double delivered, double u, double runningPa) {}

    /** Rising by drive flow; empty where the library has no answer for this install. */
    static List<Row> of(Setup setup) {
        List<Row> rows = new ArrayList<>();
        for (double share : SHARES) {
            row(setup, setup.driveLMin() * share).ifPresent(rows::add);
        }
        return rows;
    }

    private static Optional<Row> row(Setup setup, double driveLMin) {
        if (!setup.model().isEmpty()
                && !new CatalogueTable(setup.model()).states(setup.fallM(), setup.liftM(), driveLMin)) {
            return Optional.empty();
        }
        try {
            Ambient ambient = Ambient.of(10, setup.altitudeM() == null ? 0 : setup.altitudeM());
            ExpectedReadings expected = ExpectedReadings.of(new AsBuilt(
                    model(setup),
                    Uncertain.relative(setup.fallM(), FALL_SHARE),
                    Uncertain.relative(setup.liftM(), LIFT_SHARE),
                    Uncertain.exact(Flow.ofLitresPerMinute(driveLMin).cubicMetresPerSecond()),
                    line(setup, ambient),
                    Optional.empty(),
                    Factors.NONE,
                    ambient));
            double delivered = expected.deliveredFlow().value();
            return delivered > 0
                    ? Optional.of(new Row(
                            expected.driveFlow().value(),
                            delivered,
                            expected.deliveredFlow().standardUncertainty(),
                            expected.running().pascals()))
                    : Optional.empty();
        } catch (ImpossibleInput | NotConverged outside) {
            return Optional.empty();
        }
    }

    private static PumpModel model(Setup setup) {
        return new PumpModel(
                "",
                performance(setup),
                Flow.ofLitresPerMinute(setup.driveLMin() / 10),
                Flow.ofLitresPerMinute(setup.driveLMin() * 10),
                Head.ofMetres(setup.fallM() / 10),
                Head.ofMetres(setup.fallM() * 10),
                Head.ofMetres(setup.liftM() * 2),
                Pressure.ofBar(100),
                Length.ofMillimetres(50));
    }

    private static LineLoss line(Setup setup, Ambient ambient) {
        Double bore = setup.pipeBoreMm();
        Double length = setup.pipeLengthM();
        if (bore == null || length == null) {
            return flow -> 0;
        }
        double nu = ambient.water().kinematicViscosity();
        return flow -> Friction.headLoss(flow, bore / 1000, length, ROUGHNESS_M, 0, nu, ambient.gravity());
    }

    private static Performance performance(Setup setup) {
        return setup.model().isEmpty() ? EfficiencyCurve.POCKET_BOOK : new CatalogueTable(setup.model()).filled();
    }
}
