package app.ramkeeper.rounds.solver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SearchTests {

    private static final double DAY = 480;

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void findsTheBestPlanOfSmallProblems(long seed) {
        Problem problem = randomProblem(seed, 6, 2, 30);

        Plan plan = new Search(problem, Limits.ofIterations(1, 4000), Progress.none()).improve(Plan.empty(problem), 1);

        assertThat(PlanCheck.of(problem, plan).breaches()).isEmpty();
        assertThat(plan.cost()).isCloseTo(bestByTryingAll(problem), within(1e-6));
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13})
    void keepsEveryRuleAndAddsUpRightly(long seed) {
        Problem problem = randomProblem(seed, 60, 5, 60);

        Plan plan =
                new Search(problem, Limits.ofIterations(seed, 3000), Progress.none()).improve(Plan.empty(problem), 1);

        PlanCheck.Verdict verdict = PlanCheck.of(problem, plan);
        assertThat(verdict.breaches()).isEmpty();
        assertThat(verdict.cost()).isCloseTo(plan.cost(), within(1e-6));
    }

    @Test
    void repeatsItselfWithTheSameSeedAndSteps() {
        Problem problem = randomProblem(5, 40, 4, 60);

        Plan one = new Search(problem, Limits.ofIterations(9, 2000), Progress.none()).improve(Plan.empty(problem), 1);
        Plan two = new Search(problem, Limits.ofIterations(9, 2000), Progress.none()).improve(Plan.empty(problem), 1);

        assertThat(two.rounds()).isDeepEqualTo(one.rounds());
    }

    @Test
    void neverMovesWhatIsFrozen() {
        Problem problem = randomProblem(6, 30, 3, 60);
        Plan first = new Search(problem, Limits.ofIterations(1, 500), Progress.none()).improve(Plan.empty(problem), 1);
        int job = first.rounds()[1][0];

        Plan next = new Search(problem.freeze(job), Limits.ofIterations(2, 3000), Progress.none()).improve(first, 1);

        assertThat(next.rounds()[1]).contains(job);
    }

    @Test
    void leavesOutWhatCostsMoreThanItIsWorth() {
        double[][] far = {{0, 100}, {100, 0}};
        Job dear = Job.of(1, 10, 0, 50, 0, DAY, 1);
        Problem problem = Problem.of(List.of(dear), List.of(round(0, DAY)), far, far, (job, at) -> 0);

        Plan plan = new Search(problem, Limits.ofIterations(1, 100), Progress.none()).improve(Plan.empty(problem), 1);

        assertThat(plan.leftOut()).containsExactly(0);
        assertThat(plan.cost()).isEqualTo(50);
    }

    @Test
    void goesFarForManyWhereOneAloneIsNotWorthTheWay() {
        double[][] far = {{0, 100}, {100, 0}};
        List<Job> jobs = Collections.nCopies(6, Job.of(1, 10, 0, 50, 0, DAY, 1));
        Problem problem = Problem.of(jobs, List.of(round(0, DAY)), far, far, (job, at) -> 0);

        Plan plan = new Search(problem, Limits.ofIterations(1, 1000), Progress.none()).improve(Plan.empty(problem), 1);

        assertThat(plan.leftOut()).isEmpty();
        assertThat(plan.cost()).isEqualTo(205);
    }

    @Test
    void sharesHoursOutWhereDrivingIsTheSame() {
        List<Job> jobs = Collections.nCopies(4, Job.of(0, 90, 0, 500, 0, DAY, 1));
        List<Round> days = Collections.nCopies(3, round(0, DAY));
        Problem problem = Problem.of(jobs, days, new double[1][1], new double[1][1], (job, at) -> 0)
                .even(new Evenness(new int[] {0, 0, 1}, new double[] {0, 0}, new double[] {900, 450}, 100));

        Plan uneven = Plan.empty(problem);
        Plan plan = new Search(problem, Limits.ofIterations(1, 2000), Progress.none()).improve(uneven, 1);

        // 270 of 900 minutes against 90 of 450 is the nearest to equal shares that two days can give
        assertThat(plan.rounds()[2]).hasSize(1);
        assertThat(plan.cost()).isCloseTo(2 * 5 + 100 * 2 * 0.05 * 0.05, within(1e-9));
    }

    @Test
    void givesLessToWhoeverIsBusyElsewhere() {
        List<Job> jobs = Collections.nCopies(3, Job.of(0, 90, 0, 500, 0, DAY, 1));
        Problem problem = Problem.of(
                        jobs, Collections.nCopies(2, round(0, DAY)), new double[1][1], new double[1][1], (job, at) -> 0)
                .even(new Evenness(new int[] {0, 1}, new double[] {400, 0}, new double[] {900, 900}, 1000));

        Plan plan = new Search(problem, Limits.ofIterations(1, 1000), Progress.none()).improve(Plan.empty(problem), 1);

        assertThat(plan.rounds()[0]).isEmpty();
    }

    @Test
    void isHomeEarlyWhereTheOrderAllowsIt() {
        // the first waits until it opens, unless the other is done before; both orders drive alike
        Job late = Job.of(1, 30, 0, 500, 300, DAY, 1);
        Job early = Job.of(2, 30, 0, 500, 0, DAY, 1);
        double[][] way = {{0, 10, 10}, {10, 0, 10}, {10, 10, 0}};
        Round day = new Round(0, 0, 0, DAY, 480, 100, 0, 0, 0.05);
        Problem problem = Problem.of(List.of(late, early), List.of(day), way, way, (job, at) -> 0);

        Plan plan = new Search(problem, Limits.ofIterations(1, 1000), Progress.none()).improve(Plan.empty(problem), 1);

        assertThat(plan.rounds()[0]).containsExactly(1, 0);
        assertThat(plan.cost()).isCloseTo(30 + 0.05 * 340, within(1e-9));
    }

    @Test
    void saysWhenAMustDoesNotFit() {
        double[][] far = {{0, 400}, {400, 0}};
        Job must = Job.of(1, 10, 0, Double.POSITIVE_INFINITY, 0, DAY, 1);
        Problem problem = Problem.of(List.of(must), List.of(round(0, DAY)), far, far, (job, at) -> 0);

        Plan plan = new Search(problem, Limits.ofIterations(1, 100), Progress.none()).improve(Plan.empty(problem), 1);

        assertThat(plan.complete(problem)).isFalse();
        assertThat(plan.leftOut()).containsExactly(0);
    }

    @Test
    void survivesNothingToDo() {
        Problem problem = Problem.of(List.of(), List.of(), new double[1][1], new double[1][1], (job, at) -> 0);

        Plan plan = new Search(problem, Limits.ofIterations(1, 10), Progress.none()).improve(Plan.empty(problem), 1);

        assertThat(plan.leftOut()).isEmpty();
    }

    @Test
    void refusesWhatCannotBe() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> round(10, 5))
                .withMessageContaining("must end after it starts");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Problem.of(
                        List.of(Job.of(7, 0, 0, 1, 0, 1, 1)),
                        List.of(),
                        new double[2][2],
                        new double[2][2],
                        (job, at) -> 0))
                .withMessageContaining("location 7 of 2");
    }

    private static Round round(double from, double until) {
        return new Round(0, 0, from, until, 400, 100, 0, 5, 0);
    }

    /** Jobs in a square of the given side, some with narrow windows, some that fit only one round, some optional. */
    private static Problem randomProblem(long seed, int size, int rounds, double side) {
        SplittableRandom random = new SplittableRandom(seed);
        double[][] point = new double[size + 1][2];
        for (double[] p : point) {
            p[0] = random.nextDouble() * side;
            p[1] = random.nextDouble() * side;
        }
        double[][] distance = new double[size + 1][size + 1];
        for (int i = 0; i <= size; i++) {
            for (int k = 0; k <= size; k++) {
                // the way back up the hill is slower
                distance[i][k] = Math.hypot(point[i][0] - point[k][0], point[i][1] - point[k][1]) * (i < k ? 1 : 1.2);
            }
        }
        List<Job> jobs = new ArrayList<>();
        for (int job = 0; job < size; job++) {
            double opens = random.nextInt(3) == 0 ? random.nextInt(300) : 0;
            double prize = random.nextInt(4) == 0 ? Double.POSITIVE_INFINITY : 20 + random.nextInt(100);
            jobs.add(Job.of(job + 1, 10 + random.nextInt(40), 1, prize, opens, opens > 0 ? opens + 90 : DAY, 1));
        }
        long only = seed;
        Evenness even = new Evenness(
                IntStream.range(0, rounds).map(round -> round % 2).toArray(),
                new double[] {0, 30},
                new double[] {700, 400},
                seed % 2 == 0 ? 0 : 80);
        return Problem.of(
                        jobs,
                        Collections.nCopies(rounds, new Round(0, 0, 0, DAY, 400, 100, 0, 5, seed % 3 == 0 ? 0 : 0.1)),
                        distance,
                        distance,
                        (job, at) -> (job + only) % 7 == 0 && at != 0 ? Double.POSITIVE_INFINITY : at * 0.25)
                .even(even);
    }

    private static double bestByTryingAll(Problem problem) {
        return extend(
                problem, new ArrayList<>(Collections.nCopies(problem.rounds.length, List.of())), new ArrayList<>(), 0);
    }

    private static double extend(Problem problem, List<List<Integer>> rounds, List<Integer> out, int job) {
        if (job == problem.size()) {
            int[][] stops = rounds.stream()
                    .map(round -> round.stream().mapToInt(Integer::intValue).toArray())
                    .toArray(int[][]::new);
            PlanCheck.Verdict verdict = PlanCheck.of(problem, new Plan(stops, out, 0));
            return verdict.sound() ? verdict.cost() : Double.POSITIVE_INFINITY;
        }
        List<Integer> without = new ArrayList<>(out);
        without.add(job);
        double best = problem.jobs[job].must() ? Double.POSITIVE_INFINITY : extend(problem, rounds, without, job + 1);
        for (int round = 0; round < rounds.size(); round++) {
            for (int place = 0; place <= rounds.get(round).size(); place++) {
                List<Integer> longer = new ArrayList<>(rounds.get(round));
                longer.add(place, job);
                List<List<Integer>> next = new ArrayList<>(rounds);
                next.set(round, longer);
                best = Math.min(best, extend(problem, next, out, job + 1));
            }
        }
        return best;
    }
}
