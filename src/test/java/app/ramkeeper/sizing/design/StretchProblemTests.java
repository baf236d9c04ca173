package app.ramkeeper.sizing.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class StretchProblemTests {

    private static final double NEVER = Double.NEGATIVE_INFINITY;
    private static final double[] PRICES = {2, 3.5, 5, 6};
    private static final double[] RATINGS = {60, 60, 60, 100};
    private static final double[] GRADIENTS = {0.05, 0.02, 0.008, 0.02};

    @Property(tries = 300)
    void agreesWithTryingEverything(
            @ForAll @Size(5) List<@DoubleRange(min = 5, max = 120) Double> lengths,
            @ForAll @Size(6) List<@DoubleRange(min = 0, max = 70) Double> levels,
            @ForAll @DoubleRange(min = 20, max = 110) double head,
            @ForAll @IntRange(min = 0, max = 1) int shut) {
        double[] z = levels.stream().mapToDouble(Double::doubleValue).toArray();
        z[0] = 0;
        StretchProblem problem = new StretchProblem(
                lengths.stream().mapToDouble(Double::doubleValue).toArray(),
                z,
                PRICES,
                RATINGS,
                shut == 1 ? 90 : NEVER,
                40,
                0.05);

        StretchProblem.Plan plan = problem.solve(GRADIENTS, head);

        double best = tryEverything(problem, head);
        assertThat(plan.cost(head)).isEqualTo(best, within(1e-9));
        if (best < Double.POSITIVE_INFINITY) {
            assertThat(costIfItHolds(problem, plan.pipes(head), head)).isCloseTo(best, within(1e-9));
        }
    }

    /** The bound that the class states: rounding costs no more than m + 1 steps less head would. */
    @Property(tries = 100)
    void losesNoMoreByRoundingThanItSays(
            @ForAll @Size(5) List<@DoubleRange(min = 5, max = 120) Double> lengths,
            @ForAll @DoubleRange(min = 35, max = 60) double head) {
        double[] l = lengths.stream().mapToDouble(Double::doubleValue).toArray();
        double[] z = {0, 10, 5, 22, 18, 30};
        double step = 0.05;

        StretchProblem coarse = new StretchProblem(l, z, PRICES, RATINGS, NEVER, 40, step);
        double finer = tryEverything(new StretchProblem(l, z, PRICES, RATINGS, NEVER, 40, 1e-7), head - 6 * step);

        assertThat(coarse.solve(GRADIENTS, head).cost(head)).isLessThanOrEqualTo(finer + 1e-9);
    }

    @Test
    void takesTheDearerClassOnlyWhereThePressureAsksForIt() {
        double[] z = {0, 30, 65, 80};
        StretchProblem problem = new StretchProblem(
                new double[] {100, 100, 100}, z, new double[] {2, 3}, new double[] {60, 100}, NEVER, 0, 0.01);

        StretchProblem.Plan plan = problem.solve(new double[] {0.01, 0.01}, 10);

        assertThat(plan.pipes(10)).containsExactly(1, 0, 0);
        assertThat(plan.cost(10)).isEqualTo(700);
        assertThat(plan.cost(3)).isEqualTo(700);
        assertThat(plan.cost(2.9)).isInfinite();
    }

    @Test
    void keepsTheHeadLineAboveAHighPoint() {
        StretchProblem problem = new StretchProblem(
                new double[] {100, 100},
                new double[] {0, 50, 40},
                new double[] {2},
                new double[] {100},
                NEVER,
                0,
                0.01);

        StretchProblem.Plan plan = problem.solve(new double[] {0.05}, 40);

        assertThat(plan.cost(15)).isEqualTo(400);
        assertThat(plan.cost(14.9)).isInfinite();
    }

    @Test
    void bearsTheDeadHeadEverywhere() {
        double[] z = {0, 30, 60};
        double[] ratings = {100, 150};
        StretchProblem problem =
                new StretchProblem(new double[] {100, 100}, z, new double[] {2, 3}, ratings, 130, 0, 0.01);

        StretchProblem.Plan plan = problem.solve(new double[] {0.01, 0.01}, 5);

        assertThat(plan.pipes(5)).containsExactly(1, 0);
    }

    @Test
    void usesNoPipeWithoutAGradient() {
        StretchProblem problem = new StretchProblem(
                new double[] {100}, new double[] {0, 30}, new double[] {1, 9}, new double[] {90, 90}, NEVER, 0, 0.01);

        StretchProblem.Plan plan = problem.solve(new double[] {Double.POSITIVE_INFINITY, 0.01}, 5);

        assertThat(plan.pipes(5)).containsExactly(1);
        assertThat(plan.cost(5)).isEqualTo(900);
    }

    private static double tryEverything(StretchProblem problem, double head) {
        int stretches = problem.lengths.length;
        double best = Double.POSITIVE_INFINITY;
        for (int code = 0; code < Math.pow(PRICES.length, stretches); code++) {
            int[] pipes = new int[stretches];
            for (int j = 0, rest = code; j < stretches; j++, rest /= PRICES.length) {
                pipes[j] = rest % PRICES.length;
            }
            best = Math.min(best, costIfItHolds(problem, pipes, head));
        }
        return best;
    }

    /** Cost of a choice by its own reckoning, walking up from the outlet; infinite if a pipe or the head gives out. */
    private static double costIfItHolds(StretchProblem problem, int[] pipes, double head) {
        double outlet = problem.levels[pipes.length];
        long line = 0;
        double cost = 0;
        for (int j = pipes.length - 1; j >= 0; j--) {
            int pipe = pipes[j];
            long before = line;
            line += (long) Math.ceil(GRADIENTS[pipe] * problem.lengths[j] / problem.step - 1e-9);
            line = Math.max(line, (long) Math.ceil((problem.levels[j] - outlet) / problem.step - 1e-9));
            double start = outlet + line * problem.step - problem.levels[j];
            double end = outlet + before * problem.step - problem.levels[j + 1];
            double shut = problem.shutLevel - Math.min(problem.levels[j], problem.levels[j + 1]);
            if (Math.max(shut, Math.max(start, end)) > RATINGS[pipe] + 1e-7) {
                return Double.POSITIVE_INFINITY;
            }
            cost += PRICES[pipe] * problem.lengths[j];
            cost += j + 1 < pipes.length && pipes[j + 1] != pipe ? problem.joint : 0;
        }
        return line * problem.step > head + 1e-7 ? Double.POSITIVE_INFINITY : cost;
    }
}
