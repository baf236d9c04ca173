package app.ramkeeper.bench.rounds;

import app.ramkeeper.rounds.solver.Job;
import app.ramkeeper.rounds.solver.Problem;
import app.ramkeeper.rounds.solver.Round;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;

/** Maps the academic file formats, described beside the files, onto the optimiser's problem. */
final class AcademicFile {

    private AcademicFile() {}

    /** Solomon and Gehring-Homberger: all customers must be in, identical vehicles. */
    static Problem vrptw(Path file) throws IOException {
        List<double[]> rows = new ArrayList<>();
        double[] fleet = {};
        for (String line : Files.readAllLines(file)) {
            double[] numbers = numbers(line);
            if (numbers.length == 2) {
                fleet = numbers;
            } else if (numbers.length == 7) {
                rows.add(numbers);
            }
        }
        double[][] distance = matrix(rows, 1, exact -> exact);
        double[] depot = rows.get(0);
        List<Job> jobs = new ArrayList<>();
        for (int i = 1; i < rows.size(); i++) {
            double[] row = rows.get(i);
            jobs.add(Job.of(i, row[6], row[3], Double.POSITIVE_INFINITY, row[4], row[5], 1));
        }
        Round round = new Round(0, 0, depot[4], depot[5], Double.POSITIVE_INFINITY, fleet[1], 0, 0, 0);
        return Problem.of(jobs, Collections.nCopies((int) fleet[0], round), distance, distance, (job, at) -> 0);
    }

    /** Orienteering: every visit has a score and may be left out; distances rounded down to a tenth. */
    static Problem toptw(Path file, int routes) throws IOException {
        List<double[]> rows = new ArrayList<>();
        List<String> lines = Files.readAllLines(file);
        for (String line : lines.subList(2, lines.size())) {
            double[] numbers = numbers(line);
            if (numbers.length > 6) {
                rows.add(numbers);
            }
        }
        double[][] time = matrix(rows, 1, exact -> Math.floor(10 * exact + 1e-9) / 10);
        double[][] cost = scaled(time, 1e-4);
        List<Job> jobs = new ArrayList<>();
        for (int i = 1; i < rows.size(); i++) {
            double[] row = rows.get(i);
            jobs.add(Job.of(i, row[3], 0, row[4], row[row.length - 2], row[row.length - 1], 1));
        }
        double close = rows.get(0)[rows.get(0).length - 1];
        Round round = new Round(0, 0, 0, close, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, 0, 0, 0);
        return Problem.of(jobs, Collections.nCopies(routes, round), time, cost, (job, at) -> 0);
    }

    /** Prize-collecting, site-dependent and multi-depot files of the sectioned format. */
    static Problem sectioned(Path file) throws IOException {
        Sections sections = Sections.read(file);
        boolean prizes = sections.rows.containsKey("PRIZE_SECTION");
        double unit = prizes ? 10 : 1000;
        DoubleUnaryOperator rounding = prizes ? exact -> Math.floor(10 * exact) : exact -> Math.rint(1000 * exact);
        List<double[]> points = sections.section("NODE_COORD_SECTION");
        double[][] distance = matrix(points, 1, rounding);
        int depots = Math.max(1, sections.depots().size());
        List<Job> jobs = new ArrayList<>();
        for (int node = depots; node < points.size(); node++) {
            double service = sections.value("SERVICE_TIME_SECTION", node, 1, sections.head("SERVICE_TIME", 0));
            double prize = prizes ? 10 * sections.value("PRIZE_SECTION", node, 1, 0) : Double.POSITIVE_INFINITY;
            double[] window = sections.section("TIME_WINDOW_SECTION").get(node);
            jobs.add(Job.of(
                    node,
                    unit * service,
                    sections.value("DEMAND_SECTION", node, 1, 0),
                    prize,
                    unit * window[1],
                    unit * window[2],
                    1));
        }
        return Problem.of(jobs, rounds(sections, unit), distance, distance, fit(sections, depots));
    }

    private static List<Round> rounds(Sections sections, double unit) {
        List<Round> rounds = new ArrayList<>();
        double longest = sections.head("VEHICLES_MAX_DURATION", Double.POSITIVE_INFINITY) * unit;
        for (int vehicle = 0; vehicle < (int) sections.head("VEHICLES", 0); vehicle++) {
            int depot = (int) sections.value("VEHICLES_DEPOT_SECTION", vehicle, 1, 1) - 1;
            double[] open = sections.section("TIME_WINDOW_SECTION").get(depot);
            double capacity =
                    sections.value("CAPACITY_SECTION", vehicle, 1, sections.head("CAPACITY", Double.POSITIVE_INFINITY));
            rounds.add(new Round(depot, depot, unit * open[1], unit * open[2], longest, capacity, 0, 0, 0));
        }
        return rounds;
    }

    private static Problem.Fit fit(Sections sections, int depots) {
        List<double[]> allowed = sections.section("VEHICLES_ALLOWED_CLIENTS_SECTION");
        if (allowed.isEmpty()) {
            return (job, round) -> 0;
        }
        return (job, round) -> {
            double[] row = allowed.get(round);
            for (int i = 1; i < row.length; i++) {
                if ((int) row[i] == job + depots + 1) {
                    return 0;
                }
            }
            return Double.POSITIVE_INFINITY;
        };
    }

    private static double[][] matrix(List<double[]> rows, int x, DoubleUnaryOperator rounding) {
        double[][] matrix = new double[rows.size()][rows.size()];
        for (int i = 0; i < matrix.length; i++) {
            for (int k = 0; k < matrix.length; k++) {
                double[] a = rows.get(i);
                double[] b = rows.get(k);
                matrix[i][k] = rounding.applyAsDouble(Math.hypot(a[x] - b[x], a[x + 1] - b[x + 1]));
            }
        }
        return matrix;
    }

    private static double[][] scaled(double[][] matrix, double factor) {
        double[][] scaled = new double[matrix.length][matrix.length];
        for (int i = 0; i < matrix.length; i++) {
            for (int k = 0; k < matrix.length; k++) {
                scaled[i][k] = matrix[i][k] * factor;
            }
        }
        return scaled;
    }

    private static double[] numbers(String line) {
        String[] words = line.strip().split("\\s+");
        double[] numbers = new double[words.length];
        try {
            for (int i = 0; i < words.length; i++) {
                numbers[i] = Double.parseDouble(words[i]);
            }
        } catch (NumberFormatException text) {
            return new double[0];
        }
        return numbers;
    }

    /** The head and the sections of a file; node and vehicle numbers begin at 1 and are rows here. */
    private record Sections(Map<String, Double> heads, Map<String, List<double[]>> rows) {

        static Sections read(Path file) throws IOException {
            Sections sections = new Sections(new HashMap<>(), new HashMap<>());
            List<double[]> current = new ArrayList<>();
            for (String line : Files.readAllLines(file)) {
                if (line.contains(":")) {
                    double[] value = numbers(line.substring(line.indexOf(':') + 1));
                    if (value.length == 1) {
                        sections.heads.put(line.substring(0, line.indexOf(':')).strip(), value[0]);
                    }
                } else if (line.strip().endsWith("_SECTION")) {
                    current = new ArrayList<>();
                    sections.rows.put(line.strip(), current);
                } else if (numbers(line).length > 0) {
                    current.add(numbers(line));
                }
            }
            return sections;
        }

        List<double[]> section(String name) {
            return rows.getOrDefault(name, List.of());
        }

        List<Double> depots() {
            return rows.getOrDefault("DEPOT_SECTION", List.of()).stream()
                    .map(row -> row[0])
                    .filter(node -> node > 0)
                    .toList();
        }

        double head(String name, double otherwise) {
            return heads.getOrDefault(name, otherwise);
        }

        double value(String section, int row, int column, double otherwise) {
            List<double[]> found = section(section);
            return found.isEmpty() ? otherwise : found.get(row)[column];
        }
    }
}
