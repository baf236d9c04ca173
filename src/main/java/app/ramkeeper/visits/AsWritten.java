package app.ramkeeper.visits;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What a report was written with on the spot that is not part of the report itself: told to whoever reads it later. */
public interface AsWritten {

    /** Of the report, or of the one it corrects; empty where nothing more is known. */
    Optional<Told> of(ReportId report);

    /**
     * More than the report says.
     *
     * @param runs each reading that was timed with a bucket
     * @param list number of the guided list's edition; absent if none was worked through
     * @param explained its hold points that were not ticked, with what was written instead
     * @param steps valve settings tried
     */
    record Told(List<Runs> runs, @Nullable Integer list, List<Explained> explained, List<Step> steps) {

        public boolean isEmpty() {
            return runs.isEmpty() && list == null && steps.isEmpty();
        }
    }

    /**
     * A bucket filled several times.
     *
     * @param mean flow, l/min
     * @param spread standard deviation of the runs, l/min; absent for a single run
     */
    record Runs(
            String installName,
            Quantity quantity,
            double litres,
            List<Double> seconds,
            double mean,
            @Nullable Double spread) {}

    /** A hold point and why it was not ticked. */
    record Explained(String point, String why) {}

    /** A valve setting with what was measured at it, as typed, l/min. */
    record Step(
            @Nullable String setting,
            @Nullable String drive,
            @Nullable String delivered) {}
}
