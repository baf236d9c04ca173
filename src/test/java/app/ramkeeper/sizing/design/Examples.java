package app.ramkeeper.sizing.design;

import app.ramkeeper.sizing.line.GroundProfile;
import app.ramkeeper.sizing.pipe.PipeCatalogue;
import app.ramkeeper.sizing.pipe.PipeRun;
import app.ramkeeper.sizing.pipe.PipeType;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.ram.PumpModel;
import app.ramkeeper.sizing.ram.RatioPerformance;
import app.ramkeeper.sizing.water.Ambient;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Invented pumps, pipes and hills. */
public final class Examples {

    private static final double[] RATIOS = {3, 6, 10, 15, 20, 25};
    private static final double[] EFFICIENCIES = {0.72, 0.66, 0.6, 0.5, 0.38, 0.25};

    private Examples() {}

    /** A model whose efficiency is scaled by a factor. */
    public static PumpModel pump(String name, double least, double most, double bore, double factor) {
        double[] eta = new double[EFFICIENCIES.length];
        for (int i = 0; i < eta.length; i++) {
            eta[i] = EFFICIENCIES[i] * factor;
        }
        return new PumpModel(
                name,
                RatioPerformance.of(name + "'s table", RATIOS, eta),
                Flow.ofLitresPerMinute(least),
                Flow.ofLitresPerMinute(most),
                new Head(1.5),
                new Head(12),
                new Head(100),
                Pressure.ofBar(25),
                Length.ofMillimetres(bore));
    }

    public static PumpUnit unit(double least, double most) {
        return new PumpUnit(
                pump("Two inch", least, most, 50, 1),
                new PipeRun(new Length(0.053), new Length(24), new Length(0.00015), 0.5));
    }

    public static PipeType steel(int nominal) {
        return PipeCatalogue.find(PipeCatalogue.galvanisedSteel(), nominal, "heavy")
                .orElseThrow();
    }

    public static PipeType pe(int nominal, String series) {
        return PipeCatalogue.find(PipeCatalogue.pe100(), nominal, series).orElseThrow();
    }

    public static GroundProfile hill() {
        return GroundProfile.of(0, 100, 120, 108, 200, 104, 320, 125, 420, 140);
    }

    public static DesignTask task(double sourceLMin, double demandLDay) {
        return new DesignTask(
                hill(),
                142,
                new Head(5),
                Flow.ofLitresPerMinute(sourceLMin),
                Flow.ofLitresPerDay(demandLDay),
                new Length(24),
                DesignLimits.usual(),
                Ambient.standard());
    }

    public static DesignCatalogue small() {
        return new DesignCatalogue(
                List.of(
                        new PricedPump(pump("Inch and a half", 15, 45, 40, 0.95), 900),
                        new PricedPump(pump("Two inch", 25, 80, 50, 1), 1500),
                        new PricedPump(pump("Three inch", 70, 220, 80, 1.05), 3200)),
                List.of(new PricedPipe(steel(40), 14), new PricedPipe(steel(50), 19), new PricedPipe(steel(80), 31)),
                List.of(
                        new PricedPipe(pe(25, "SDR 11"), 3.2),
                        new PricedPipe(pe(32, "SDR 17"), 3.4),
                        new PricedPipe(pe(32, "SDR 11"), 3.9),
                        new PricedPipe(pe(40, "SDR 11"), 5.1)));
    }

    /** 12 models, 8 drive pipes, 10 delivery pipes. */
    public static DesignCatalogue large() {
        List<PricedPump> pumps = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            double most = 30 * Math.pow(1.2, i);
            double bore = i < 4 ? 40 : i < 8 ? 50 : 80;
            pumps.add(new PricedPump(pump("Model " + i, most / 3.5, most, bore, 0.93 + 0.01 * (i % 5)), 700 + 170 * i));
        }
        List<PricedPipe> drives = new ArrayList<>();
        double price = 11;
        for (PipeType type : PipeCatalogue.galvanisedSteel()) {
            if (type.nominal() >= 32 && type.nominal() <= 80 && drives.size() < 8) {
                drives.add(new PricedPipe(type, price += 2.3));
            }
        }
        List<PricedPipe> lines = new ArrayList<>();
        for (int nominal : new int[] {25, 32, 40, 50, 63}) {
            lines.add(new PricedPipe(
                    pe(nominal, nominal >= 32 ? "SDR 17" : "SDR 13.6"), nominal * nominal * 0.0021 + 1.4));
            lines.add(new PricedPipe(pe(nominal, "SDR 11"), nominal * nominal * 0.0029 + 1.5));
        }
        return new DesignCatalogue(pumps, drives, lines);
    }

    /** A ridge and valley of 40 points with 60 m of lift. */
    public static DesignTask longTask() {
        SplittableRandom random = new SplittableRandom(7);
        double[] points = new double[80];
        for (int i = 1; i < 40; i++) {
            points[2 * i] = points[2 * i - 2] + 15 + 20 * random.nextDouble();
            points[2 * i + 1] = 60. * i / 39 + 6 * Math.sin(i * 0.9) * random.nextDouble() * (i < 39 ? 1 : 0);
        }
        return new DesignTask(
                GroundProfile.of(points),
                61,
                new Head(6),
                Flow.ofLitresPerMinute(150),
                Flow.ofLitresPerDay(6000),
                new Length(28),
                DesignLimits.usual(),
                Ambient.standard());
    }
}
