package app.ramkeeper.rounds.run;

import app.ramkeeper.rounds.week.Moved.Change;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the page of a week shows beside its rounds.
 *
 * @param runs the last run of the optimiser, if there was one
 * @param history all changes of the plan, newest first
 */
public record Beside(List<WeekRun> runs, List<Change> history) {

    public @Nullable WeekRun run() {
        return runs.isEmpty() ? null : runs.get(0);
    }
}
