package app.ramkeeper.bench.rounds;

import app.ramkeeper.rounds.run.WeekMapping;
import app.ramkeeper.rounds.solver.Job;
import app.ramkeeper.rounds.solver.Limits;
import app.ramkeeper.rounds.solver.OpenProblem;
import app.ramkeeper.rounds.solver.Plan;
import app.ramkeeper.rounds.solver.PlanCheck;
import app.ramkeeper.rounds.solver.Problem;
import app.ramkeeper.rounds.solver.Progress;
import app.ramkeeper.rounds.solver.Round;
import app.ramkeeper.rounds.solver.Search;
import app.ramkeeper.rounds.week.InventedWeek;
import app.ramkeeper.rounds.week.Week;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.lang.management.ThreadMXBean;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import java.util.stream.IntStream;

/**
 * Plans an invented week of real size through the application's own mapping, and prints a line of CSV for each plan.
 *
 * <p>Arguments, all with a default: seed (1), seconds of the short run (30), of the long run (600), of jsprit (0 for without),
 * candidates (500). To be run with the heap it is meant to need: {@code -Xmx512m}.
 */
public final class WeekBench {

    private static final long STEPS = 60_000;

    private final InventedWeek invented;
    private final WeekMapping mapping;
    private final long seed;
    private long cpu;

    private WeekBench(long seed, int candidates) {
        this.seed = seed;
        long began = System.nanoTime();
        this.invented = new InventedWeek(seed, candidates);
        long made = System.nanoTime();
        this.mapping = new WeekMapping(invented.week(), invented.burden());
        say("week made in %d ms, mapped in %d ms".formatted(millis(began, made), millis(made, System.nanoTime())));
    }

    public static void main(String[] arguments) {
        long[] numbers = {1, 30, 600, 0, 500};
        for (int i = 0; i < arguments.length; i++) {
            numbers[i] = Long.parseLong(arguments[i]);
        }
        WeekBench bench = new WeekBench(numbers[0], (int) numbers[4]);
        bench.firstPlan();
        System.out.println(
                "plan,seconds,cpu_seconds,cost,without_prizes,visits,pressing_out,late_days,late_weighted,drive_min,drive_min_a_visit,rounds,steps,sound");
        Plan byDue = PlainPlanners.nearestTechnician(bench.invented, bench.mapping);
        Plan byCluster = PlainPlanners.nearestCluster(bench.invented, bench.mapping);
        bench.line("by due date nearest technician", 0, byDue, 0);
        bench.line("nearest cluster per day", 0, byCluster, 0);
        bench.line("cheapest insertion and 2-opt", 0, CheapestInsertion.solve(bench.mapping.problem()), 0);
        bench.oursBySteps();
        bench.ours("ours", numbers[1]);
        bench.sameVisits("ours with the visits of the first", byDue, numbers[1]);
        bench.sameVisits("ours with the visits of the second", byCluster, numbers[1]);
        bench.ours("ours", numbers[2]);
        bench.heap();
        if (numbers[3] > 0) {
            Engine.Result result = bench.timed(() ->
                    Engine.JSPRIT.solve(bench.mapping.problem(), bench.seed, Duration.ofSeconds(numbers[3]), false));
            bench.line("jsprit", numbers[3], result.plan(), result.steps());
        }
    }

    /** From an engine that has never run in this machine to the first plan that keeps every rule and has all musts in. */
    private void firstPlan() {
        long began = System.nanoTime();
        long[] first = new long[1];
        Plan[] found = new Plan[1];
        Progress progress = (plan, share, steps) -> {
            if (first[0] == 0) {
                first[0] = System.nanoTime();
                found[0] = plan;
            }
        };
        new Search(mapping.problem(), Limits.ofIterations(seed, 1), progress)
                .improve(mapping.start(), mapping.warmth());
        boolean whole = found[0].complete(mapping.problem())
                && PlanCheck.of(mapping.problem(), found[0]).sound();
        say("first plan after %d ms, %s".formatted(millis(began, first[0]), whole ? "complete" : "NOT complete"));
    }

    /** As many steps as the application takes by default: the same plan on any machine, however busy. */
    private void oursBySteps() {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadCpuTime();
        long began = System.nanoTime();
        Plan plan = new Search(mapping.problem(), Limits.ofIterations(seed, STEPS), Progress.none())
                .improve(mapping.start(), mapping.warmth());
        cpu = threads.getCurrentThreadCpuTime() - before;
        line("ours by steps", millis(began, System.nanoTime()) / 1000, plan, STEPS);
    }

    private void ours(String name, long seconds) {
        Engine.Result result = ours(mapping.problem(), seconds);
        line(name, seconds, result.plan(), result.steps());
    }

    private Engine.Result ours(Problem problem, long seconds) {
        return timed(() -> Engine.improved(problem, seed, Duration.ofSeconds(seconds), mapping.warmth()));
    }

    private Engine.Result timed(Supplier<Engine.Result> run) {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadCpuTime();
        Engine.Result result = run.get();
        cpu = threads.getCurrentThreadCpuTime() - before;
        return result;
    }

    /** The optimiser with nothing to choose: all visits of another plan must go in, and no others. */
    private void sameVisits(String name, Plan other, long seconds) {
        OpenProblem all = new OpenProblem(mapping.problem());
        int[] in = IntStream.range(0, all.jobs())
                .filter(job -> !other.leftOut().contains(job))
                .toArray();
        List<Job> jobs = new ArrayList<>();
        for (int job : in) {
            Job visit = all.job(job);
            jobs.add(new Job(
                    visit.location(),
                    visit.service(),
                    visit.load(),
                    Double.POSITIVE_INFINITY,
                    visit.opens(),
                    visit.closes()));
        }
        List<Round> rounds =
                IntStream.range(0, all.rounds()).mapToObj(all::round).toList();
        double[][] time = new double[all.locations()][all.locations()];
        double[][] cost = new double[all.locations()][all.locations()];
        for (int a = 0; a < time.length; a++) {
            for (int b = 0; b < time.length; b++) {
                time[a][b] = all.time(a, b);
                cost[a][b] = all.cost(a, b);
            }
        }
        Problem problem = Problem.of(jobs, rounds, time, cost, (job, round) -> all.price(in[job], round));
        Engine.Result result = ours(problem, seconds);
        int[][] placed = new int[rounds.size()][];
        for (int round = 0; round < placed.length; round++) {
            placed[round] = IntStream.of(result.plan().rounds()[round])
                    .map(job -> in[job])
                    .toArray();
        }
        line(name, seconds, CheapestInsertion.plan(all, placed), result.steps());
    }

    private void line(String name, long seconds, Plan plan, long steps) {
        PlanCheck.Verdict verdict = PlanCheck.of(mapping.problem(), plan);
        Week placed = mapping.placed(plan);
        InventedWeek.Lateness late = invented.lateness(placed);
        Week.Totals totals = placed.totals();
        double prizes =
                plan.leftOut().stream().mapToDouble(mapping.problem()::prize).sum();
        List<String> broken = new ArrayList<>(verdict.breaches());
        placed.breaches().stream()
                .filter(breach -> breach.stop().placed())
                .forEach(breach -> broken.add(breach.words()));
        System.out.printf(
                Locale.ROOT,
                "%s,%d,%.1f,%.1f,%.1f,%d,%d,%d,%.0f,%.0f,%.2f,%d,%d,%s%n",
                name,
                seconds,
                cpu / 1e9,
                verdict.cost(),
                verdict.cost() - prizes,
                totals.in(),
                totals.pressingOut(),
                late.days(),
                late.weighted(),
                totals.driveMinutes(),
                totals.driveMinutes() / totals.in(),
                totals.rounds(),
                steps,
                broken.isEmpty() ? "yes" : broken.size() + " breaches: " + broken.get(0));
    }

    /** Peaks of all pools added up, which is more than was ever in use at once. */
    private void heap() {
        long peak = ManagementFactory.getMemoryPoolMXBeans().stream()
                .filter(pool -> pool.getType() == MemoryType.HEAP)
                .map(MemoryPoolMXBean::getPeakUsage)
                .mapToLong(usage -> usage.getUsed())
                .sum();
        System.gc();
        long kept = ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed();
        say("heap: at most %d MB with garbage, %d MB after a collection, of %d MB"
                .formatted(peak >> 20, kept >> 20, Runtime.getRuntime().maxMemory() >> 20));
    }

    private static long millis(long from, long until) {
        return (until - from) / 1_000_000;
    }

    private static void say(String words) {
        System.out.println("# " + words);
    }
}
