package app.ramkeeper.upkeep.rules;

import app.ramkeeper.catalogue.Interval;
import app.ramkeeper.catalogue.Life;
import app.ramkeeper.catalogue.Schedule;
import app.ramkeeper.catalogue.TaskTerms;
import java.time.MonthDay;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What sets the dates of one task: its kind's terms for its pump model and water, or the interval agreed for it. */
public record Terms(
        Schedule schedule,
        Interval interval,
        Life life,
        int earlyDays,
        int lateDays,
        int graceDays,
        @Nullable MonthDay season) {

    /**
     * The terms of a task.
     *
     * @param agreed the interval agreed for this install; it counts as it stands, without a factor for the water
     */
    public static Terms of(
            TaskTerms kind, @Nullable UUID model, @Nullable String waterClass, @Nullable Interval agreed) {
        Interval interval = agreed == null ? kind.intervalFor(model, waterClass) : agreed;
        return new Terms(
                kind.schedule(),
                interval,
                kind.life(),
                kind.earlyDays(),
                kind.lateDays(),
                kind.graceDays(),
                kind.season());
    }
}
