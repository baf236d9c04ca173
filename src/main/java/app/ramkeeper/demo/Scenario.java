package app.ramkeeper.demo;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.Random;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.springframework.core.io.ClassPathResource;

/** The parameters and words of the scenario, and its seeded dice. */
final class Scenario {

    private final Properties parameters = new Properties();
    private final Map<String, List<String>> words = new LinkedHashMap<>();
    private final Random dice;

    Scenario() throws IOException {
        try (Reader in = open("db/demo/scenario.properties")) {
            parameters.load(in);
        }
        try (Reader in = open("db/demo/words.csv")) {
            for (CSVRecord row : CSVFormat.RFC4180
                    .builder()
                    .setHeader()
                    .setSkipHeaderRecord(true)
                    .get()
                    .parse(in)) {
                words.computeIfAbsent(row.get("kind"), kind -> new ArrayList<>())
                        .add(row.get("word"));
            }
        }
        dice = new Random((long) number("seed"));
    }

    private static Reader open(String path) throws IOException {
        return new InputStreamReader(new ClassPathResource(path).getInputStream(), StandardCharsets.UTF_8);
    }

    double number(String name) {
        return Double.parseDouble(parameters.getProperty(name));
    }

    int count(String name) {
        return (int) number(name);
    }

    String word(String kind) {
        List<String> all = words.getOrDefault(kind, List.of());
        return all.get(dice.nextInt(all.size()));
    }

    boolean chance(double share) {
        return dice.nextDouble() < share;
    }

    double between(double low, double high) {
        return low + dice.nextDouble() * (high - low);
    }

    int between(int low, int high) {
        return low + dice.nextInt(high - low + 1);
    }

    /** A value scattered around one by a normal share. */
    double scattered(double value, double share) {
        return value * (1 + share * dice.nextGaussian());
    }

    /** A life in months drawn from the true distribution of a rubber. */
    double life(String rubber, double factor) {
        double scale = number(rubber + ".rubber.life.scale") * factor;
        return scale * Math.pow(-Math.log(1 - dice.nextDouble()), 1 / number(rubber + ".rubber.life.shape"));
    }

    <T> T oneOf(List<T> items) {
        return items.get(dice.nextInt(items.size()));
    }
}
