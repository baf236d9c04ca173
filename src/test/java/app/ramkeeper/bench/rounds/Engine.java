package app.ramkeeper.bench.rounds;

import app.ramkeeper.rounds.solver.Limits;
import app.ramkeeper.rounds.solver.Plan;
import app.ramkeeper.rounds.solver.Problem;
import app.ramkeeper.rounds.solver.Progress;
import app.ramkeeper.rounds.solver.Search;
import java.time.Duration;
import java.util.function.Function;

/** What is measured: the application's optimiser, or one of the two yardsticks. */
enum Engine {
    OURS {
        @Override
        Result solve(Problem problem, long seed, Duration time, boolean fewest) {
            return fewest
                    ? ours(problem, seed, time, search -> search.fewestRounds(0.4))
                    : improved(problem, seed, time, 1);
        }
    },
    /** Neither seed nor time matter to it. */
    INSERTION {
        @Override
        Result solve(Problem problem, long seed, Duration time, boolean fewest) {
            return new Result(CheapestInsertion.solve(problem), problem.size());
        }
    },
    JSPRIT {
        @Override
        Result solve(Problem problem, long seed, Duration time, boolean fewest) {
            return new JspritEngine(problem, fewest).solve(seed, time);
        }
    };

    /** The application's optimiser from scratch. */
    static Result improved(Problem problem, long seed, Duration time, double warmth) {
        return ours(problem, seed, time, search -> search.improve(Plan.empty(problem), warmth));
    }

    private static Result ours(Problem problem, long seed, Duration time, Function<Search, Plan> run) {
        long[] steps = new long[1];
        Progress count = (plan, share, iterations) -> steps[0] = iterations;
        Plan plan = run.apply(new Search(problem, Limits.ofTime(seed, time), count));
        return new Result(plan, steps[0]);
    }

    /** A plan and how many steps it took. */
    record Result(Plan plan, long steps) {}

    /** Solves a problem on one thread; {@code fewest} asks for the fewest rounds before the cost. */
    abstract Result solve(Problem problem, long seed, Duration time, boolean fewest);
}
