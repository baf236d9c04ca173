package app.ramkeeper.bench.sizing;

import app.ramkeeper.sizing.design.Battery;
import app.ramkeeper.sizing.design.DeliveryForecast;
import app.ramkeeper.sizing.design.DesignCatalogue;
import app.ramkeeper.sizing.design.DesignFront;
import app.ramkeeper.sizing.design.DesignSearch;
import app.ramkeeper.sizing.design.DesignTask;
import app.ramkeeper.sizing.design.Examples;
import app.ramkeeper.sizing.design.Spread;
import app.ramkeeper.sizing.pipe.Friction;
import app.ramkeeper.sizing.pipe.PipeRun;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Uncertain;
import app.ramkeeper.sizing.ram.Cycle;
import app.ramkeeper.sizing.ram.CycleSetup;
import app.ramkeeper.sizing.ram.DutyPoint;
import app.ramkeeper.sizing.ram.ElasticCycle;
import app.ramkeeper.sizing.ram.LineLoss;
import app.ramkeeper.sizing.ram.Performance;
import app.ramkeeper.sizing.ram.RigidCycle;
import app.ramkeeper.sizing.ram.Setups;
import app.ramkeeper.sizing.water.Ambient;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/** How long the parts of sizing take. Run {@link #main}; figures are kept in {@code ops/bench/RESULTS.md}. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 4, time = 1)
@Fork(1)
public class SizingBench {

    private double re = 1e5;
    private double rough = 1e-4;
    private final CycleSetup setup = Setups.hill();
    private final Performance pump = Examples.pump("Two inch", 25, 60, 50, 1).performance();
    private final LineLoss line = LineLoss.of(
            List.of(
                    new PipeRun(new Length(0.026), new Length(200), new Length(1e-5), 2),
                    new PipeRun(new Length(0.032), new Length(220), new Length(1e-5), 2)),
            Ambient.standard());
    private final DesignTask task = Examples.longTask();
    private final DesignCatalogue catalogue = Examples.large();
    private final Battery battery = new Battery(
            List.of(Examples.unit(25, 60), Examples.unit(25, 60)),
            new Head(5),
            new Head(40),
            line,
            Optional.empty(),
            Ambient.standard());
    private final Spread spread = new Spread(
            new Uncertain(5, 0.05),
            new Uncertain(40, 0.5),
            new Uncertain(0.0016, 0.0001),
            new Uncertain(0.9, 0.05),
            0.0001,
            Spread.MODEL_PRIOR,
            Spread.USUAL_RUNNING);

    @Benchmark
    public double twoLogarithms() {
        re = re < 1e6 ? re * 1.01 : 1e5;
        return Math.log(re) + Math.log(re + rough);
    }

    @Benchmark
    public double frictionFactor() {
        re = re < 1e6 ? re * 1.01 : 1e5;
        return Friction.factor(re, rough);
    }

    @Benchmark
    public double dutyPoint() {
        return DutyPoint.deliveredM3s(pump, 5, 40, 0.0008, line);
    }

    @Benchmark
    public Cycle rigidCycle() {
        return RigidCycle.run(setup);
    }

    @Benchmark
    public Cycle elasticBeats() {
        return ElasticCycle.run(setup);
    }

    @Benchmark
    public DesignFront designSearch() {
        return DesignSearch.front(task, catalogue);
    }

    @Benchmark
    public DeliveryForecast forecast() {
        return DeliveryForecast.of(battery, spread, 1, DeliveryForecast.USUAL_EVALUATIONS);
    }

    public static void main(String[] args) throws RunnerException {
        new Runner(new OptionsBuilder()
                        .include(SizingBench.class.getSimpleName())
                        .addProfiler(GCProfiler.class)
                        .build())
                .run();
    }
}
