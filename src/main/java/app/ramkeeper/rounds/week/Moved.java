package app.ramkeeper.rounds.week;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Somebody else changed the plan meanwhile. Carries what they did, so that both can be shown and nothing is lost. */
public final class Moved extends RuntimeException {

    private static final long serialVersionUID = 1;

    private final transient WeekPlan plan;
    private final transient List<Change> theirs;

    Moved(WeekPlan plan, List<Change> theirs) {
        super("The plan was changed meanwhile");
        this.plan = plan;
        this.theirs = List.copyOf(theirs);
    }

    /** One change of a plan. */
    public record Change(
            int no,
            Instant at,
            @Nullable String name,
            String what,
            @Nullable Integer sameAs) {}

    public WeekPlan plan() {
        return plan;
    }

    public List<Change> theirs() {
        return theirs;
    }
}
