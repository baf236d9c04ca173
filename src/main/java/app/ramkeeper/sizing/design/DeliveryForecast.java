package app.ramkeeper.sizing.design;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Numbers;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.quantity.Uncertain;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.stat.correlation.SpearmansCorrelation;

/**
 * How much a battery delivers in a dry month, and how sure that is.
 *
 * <p>Each input is drawn from its normal distribution, cut at what can be, and the battery's duty solved for each draw:
 * the same seed gives the same answer. Promise {@link #p10}, which nine dry months in ten should pass; never the middle.
 * Method: JCGM 101:2008, Propagation of distributions using a Monte Carlo method. Which input contributes most is told by
 * the squared rank correlation (Spearman) of input and result, scaled to add up to 1.
 *
 * @param p10 mean flow over the day that is passed with 90 % chance
 * @param p50 with even chance
 * @param p90 with 10 % chance
 * @param contributions largest first
 * @param notes what was assumed, and what to know of the duty in the middle of the spread
 */
public record DeliveryForecast(Flow p10, Flow p50, Flow p90, List<Contribution> contributions, List<Note> notes) {

    /** Evaluations that do for a promise. */
    public static final int USUAL_EVALUATIONS = 10_000;

    private static final String[] INPUTS = {
        "fall", "lift", "measured source", "dry season", "model", "share of time running"
    };
    private static final NormalDistribution NORMAL = new NormalDistribution(0, 1);

    /**
     * An input's part in the spread.
     *
     * @param input its name
     * @param share 0 to 1, all adding up to 1
     */
    public record Contribution(String input, double share) {}

    /** Keeps its own copies. */
    public DeliveryForecast {
        contributions = List.copyOf(contributions);
        notes = List.copyOf(notes);
    }

    /** What may be promised: the dry-month P10. */
    public Flow promise() {
        return p10;
    }

    /**
     * Forecast for a battery with as many of its pumps running as the source feeds.
     *
     * @param battery as designed; its own fall and lift stand aside for the spread's
     * @param spread what is not known for sure
     * @param seed of the random numbers
     * @param evaluations 100 to 1 000 000
     */
    public static DeliveryForecast of(Battery battery, Spread spread, long seed, int evaluations) {
        Require.within("evaluations", evaluations, 100, 1_000_000, "");
        SplittableRandom random = new SplittableRandom(seed);
        double capacity = battery.feed()
                .map(feed -> feed.capacity(battery.ambient()).cubicMetresPerSecond())
                .orElse(Double.POSITIVE_INFINITY);
        double[][] inputs = new double[INPUTS.length][evaluations];
        double[] results = new double[evaluations];
        for (int i = 0; i < evaluations; i++) {
            double fall = inputs[0][i] = draw(random, spread.fall(), 0.01, 1e4);
            double lift = inputs[1][i] = draw(random, spread.lift(), 0.01, 1e4);
            double measured = inputs[2][i] = draw(random, spread.measuredSource(), 0, 1e6);
            double dry = inputs[3][i] = draw(random, spread.dryShare(), 0, 1);
            double model = inputs[4][i] = draw(random, spread.model(), 0, 10);
            double running = inputs[5][i] = draw(random, spread.running(), 0, 1);
            double water = Math.min(capacity, Math.max(0, measured * dry - spread.mustStayM3s()));
            double delivered = Math.min(battery.forecastM3s(fall, lift, water) * model, water * fall / lift);
            results[i] = delivered * running;
        }
        double[] sorted = results.clone();
        Arrays.sort(sorted);
        return new DeliveryForecast(
                quantile(sorted, 0.1),
                quantile(sorted, 0.5),
                quantile(sorted, 0.9),
                contributions(inputs, results),
                notes(battery, spread));
    }

    private static double draw(SplittableRandom random, Uncertain input, double low, double high) {
        // half a step off the ends: nextDouble may give 0, whose normal is minus infinity
        double share = random.nextDouble() + 0x1p-54;
        double value = input.value() + input.standardUncertainty() * NORMAL.inverseCumulativeProbability(share);
        return Math.min(high, Math.max(low, value));
    }

    private static Flow quantile(double[] sorted, double share) {
        double place = share * (sorted.length - 1);
        int below = (int) place;
        int above = Math.min(sorted.length - 1, below + 1);
        return new Flow(sorted[below] + (place - below) * (sorted[above] - sorted[below]));
    }

    private static List<Contribution> contributions(double[][] inputs, double[] results) {
        double[] squares = new double[inputs.length];
        for (int i = 0; i < inputs.length; i++) {
            double correlation = new SpearmansCorrelation().correlation(inputs[i], results);
            // an input or a result that never varies correlates with nothing
            squares[i] = Double.isNaN(correlation) ? 0 : correlation * correlation;
        }
        double sum = Arrays.stream(squares).sum();
        List<Contribution> contributions = new ArrayList<>();
        for (int i = 0; i < inputs.length; i++) {
            contributions.add(new Contribution(INPUTS[i], sum == 0 ? 0 : squares[i] / sum));
        }
        contributions.sort((a, b) -> Double.compare(b.share(), a.share()));
        return contributions;
    }

    private static List<Note> notes(Battery battery, Spread spread) {
        List<Note> notes = new ArrayList<>();
        notes.add(new Note(
                Note.Code.ASSUMED,
                "The pumps are taken to deliver "
                        + Numbers.text(100 * spread.model().value())
                        + " % of what their model's table says, two times in three within "
                        + Numbers.text(100 * spread.model().standardUncertainty()) + " % either way."));
        Battery middle = new Battery(
                battery.units(),
                new Head(spread.fall().value()),
                new Head(spread.lift().value()),
                battery.line(),
                battery.feed(),
                battery.ambient());
        double water = spread.measuredSource().value() * spread.dryShare().value() - spread.mustStayM3s();
        notes.addAll(middle.forecastNotes(new Flow(Math.max(0, water))));
        return notes;
    }
}
