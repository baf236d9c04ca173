package app.ramkeeper.sizing.pipe;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** One pipe of a network that the public-domain engine solved; see the script beside the table. */
record EngineCase(
        String id,
        String kind,
        String pipe,
        double boreM,
        double roughnessM,
        double lengthM,
        double fittings,
        double waterCelsius,
        double nu,
        double flowM3s,
        double lossM) {

    static List<EngineCase> all() {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(EngineCase.class.getResourceAsStream("/sizing/pipe-flow-cases.csv")),
                StandardCharsets.UTF_8))) {
            return reader.lines().skip(1).map(EngineCase::parse).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static EngineCase parse(String line) {
        String[] cell = line.split(",", -1);
        return new EngineCase(
                cell[0],
                cell[1],
                cell[2],
                Double.parseDouble(cell[4]) / 1000,
                Double.parseDouble(cell[5]) / 1000,
                Double.parseDouble(cell[6]),
                Double.parseDouble(cell[7]),
                Double.parseDouble(cell[8]),
                Double.parseDouble(cell[9]),
                Double.parseDouble(cell[10]) / 1000,
                Double.parseDouble(cell[11]));
    }

    double reynolds() {
        return Math.abs(Friction.velocity(flowM3s, boreM)) * boreM / nu;
    }

    /** Head loss by a friction factor, m. */
    double lossBy(double factor, double gravity) {
        double v = Friction.velocity(flowM3s, boreM);
        return (factor * lengthM / boreM + fittings) * v * Math.abs(v) / (2 * gravity);
    }

    @Override
    public String toString() {
        return "%s %s: %.3f l/s, Re %.0f".formatted(id, pipe, flowM3s * 1000, reynolds());
    }
}
