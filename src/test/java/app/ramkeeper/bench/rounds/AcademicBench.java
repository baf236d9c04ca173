package app.ramkeeper.bench.rounds;

import app.ramkeeper.rounds.solver.Plan;
import app.ramkeeper.rounds.solver.PlanCheck;
import app.ramkeeper.rounds.solver.Problem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Runs academic files and prints a line of CSV for each: instance, seed, vehicles, cost, best-known values, gap.
 *
 * <p>Arguments: the folder of the files, then the set (vrptw, toptw, pcvrptw, sdvrptw, mdvrptw), seconds, seeds
 * (comma separated), the engine (ours, insertion, jsprit; ours if it is not named), and names of instances or nothing for
 * all in best-known.csv.
 */
public final class AcademicBench {

    private AcademicBench() {}

    public static void main(String[] arguments) throws IOException {
        Path folder = Path.of(arguments[0], arguments[1]);
        Duration time = Duration.ofMillis(Math.round(1000 * Double.parseDouble(arguments[2])));
        List<String> names = new ArrayList<>(List.of(arguments).subList(4, arguments.length));
        Engine engine = Arrays.stream(Engine.values())
                .filter(e -> !names.isEmpty() && e.name().equalsIgnoreCase(names.get(0)))
                .findFirst()
                .orElse(null);
        if (engine != null) {
            names.remove(0);
        }
        System.out.println(
                "set,instance,seed,vehicles,best_vehicles,cost,best_cost,gap_percent,iterations,sound,engine");
        for (String line : Files.readAllLines(folder.resolve("best-known.csv")).stream()
                .skip(1)
                .toList()) {
            String[] cells = line.split(",");
            if (names.isEmpty() || names.contains(cells[0])) {
                for (String seed : arguments[3].split(",")) {
                    run(engine == null ? Engine.OURS : engine, arguments[1], folder, cells, Long.parseLong(seed), time);
                }
            }
        }
    }

    private static void run(Engine engine, String set, Path folder, String[] cells, long seed, Duration time)
            throws IOException {
        boolean scores = set.equals("toptw");
        Problem problem = read(set, folder, cells);
        Engine.Result result = engine.solve(problem, seed, time, set.equals("vrptw"));
        Plan plan = result.plan();
        PlanCheck.Verdict verdict = PlanCheck.of(problem, plan);
        double value = scores ? score(problem, plan) : verdict.cost();
        double best = Double.parseDouble(cells[2]);
        double gap = scores ? 100 * (best - value) / best : 100 * (value - best) / best;
        System.out.printf(
                Locale.ROOT,
                "%s,%s,%d,%d,%s,%.2f,%s,%.3f,%d,%s,%s%n",
                set,
                cells[0] + (scores ? "/" + cells[1] : ""),
                seed,
                plan.used(),
                cells[1],
                value,
                cells[2],
                gap,
                result.steps(),
                verdict.sound()
                        ? "yes"
                        : verdict.breaches().size() + " breaches: "
                                + verdict.breaches().get(0),
                engine.name().toLowerCase(Locale.ROOT));
    }

    private static double score(Problem problem, Plan plan) {
        double all = 0;
        for (int job = 0; job < problem.size(); job++) {
            all += problem.prize(job);
        }
        return all - plan.leftOut().stream().mapToDouble(problem::prize).sum();
    }

    private static Problem read(String set, Path folder, String[] cells) throws IOException {
        return switch (set) {
            case "vrptw" -> AcademicFile.vrptw(folder.resolve(cells[0] + ".txt"));
            case "toptw" -> AcademicFile.toptw(folder.resolve(cells[0] + ".txt"), Integer.parseInt(cells[1]));
            default -> AcademicFile.sectioned(folder.resolve(cells[0] + ".vrp"));
        };
    }
}
