package app.ramkeeper.bench.rounds;

import app.ramkeeper.rounds.solver.Limits;
import app.ramkeeper.rounds.solver.Plan;
import app.ramkeeper.rounds.solver.Problem;
import app.ramkeeper.rounds.solver.Progress;
import app.ramkeeper.rounds.solver.Search;
import java.time.Duration;

/** What is measured: the application's optimiser, or one of the two yardsticks. */
enum Engine {
    OURS {
        @Override
        Result solve(Problem problem, long seed, Duration time, boolean fewest) {
            long[] steps = new long[1];
            Progress count = (plan, share, iterations) -> steps[0] = iterations;
            Search search = new Search(problem, Limits.ofTime(seed, time), count);
            Plan plan = fewest ? search.fewestRounds(0.4) : search.improve(Plan.empty(problem), 1);
            return new Result(plan, steps[0]);
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

    /** A plan and how many steps it took. */
    record Result(Plan plan, long steps) {}

    /** Solves a problem on one thread; {@code fewest} asks for the fewest rounds before the cost. */
    abstract Result solve(Problem problem, long seed, Duration time, boolean fewest);
}
