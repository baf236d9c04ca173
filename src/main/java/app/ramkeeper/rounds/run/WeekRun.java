package app.ramkeeper.rounds.run;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A run of the optimiser for a week. */
public record WeekRun(
        UUID id,
        UUID planId,
        String kind,
        long seed,
        long iterations,
        int baseVersion,
        String state,
        UUID askedBy,
        String actor,
        Instant askedAt,
        @Nullable Instant finishedAt,
        boolean stopWanted,
        double share,
        @Nullable Integer visitsIn,
        @Nullable Integer driveMinutes,
        @Nullable Integer lateVisits,
        @Nullable String message) {

    public boolean isGoing() {
        return state.equals("WAITING") || state.equals("WORKING");
    }

    public int percent() {
        return (int) Math.round(100 * share);
    }

    boolean lightly() {
        return kind.equals("LIGHTLY");
    }
}
