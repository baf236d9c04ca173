package app.ramkeeper.demo;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Objects;
import java.util.Properties;
import java.util.random.RandomGenerator;

/** The truth of the demo: how long rubbers last in which water, and how flow falls with their age. */
final class Wear {

    private final Properties truth = new Properties();

    Wear() {
        try (InputStream file = Objects.requireNonNull(Wear.class.getResourceAsStream("/db/demo/wear.properties"))) {
            truth.load(file);
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    double number(String name) {
        return Double.parseDouble(Objects.requireNonNull(truth.getProperty(name), name));
    }

    int count(String name) {
        return (int) number(name);
    }

    /** Draws the life of a new rubber, in months. */
    double life(String water, RandomGenerator random) {
        return number("rubber.scale." + water)
                * Math.pow(-Math.log(1 - random.nextDouble()), 1 / number("rubber.shape"));
    }

    /** What is left of the delivered flow at an age, as a part of the new rubber's. */
    double flowLeft(double ageMonths, double lifeMonths) {
        double worn = Math.min(1.4, ageMonths / lifeMonths);
        return 1 - number("flow.lost.at.end") * worn * worn;
    }

    /** A reading of a flow, with the spread of bucket and watch. */
    double read(double flow, RandomGenerator random) {
        return Math.round(flow * (1 + number("reading.noise") * random.nextGaussian()) * 100) / 100.0;
    }
}
