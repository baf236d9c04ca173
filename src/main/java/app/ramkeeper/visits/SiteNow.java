package app.ramkeeper.visits;

import app.ramkeeper.fleet.InstallId;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * How a site stands after its visits so far.
 *
 * @param readings the last reading of each quantity at each place of its installs
 * @param followUps what is left to do, promises first
 * @param planned what is planned, by day
 * @param pictures how many pictures it has
 * @param gate the picture of its gate
 */
public record SiteNow(
        List<LastReading> readings,
        List<OpenFollowUp> followUps,
        List<PlannedVisit> planned,
        int pictures,
        @Nullable Gate gate) {

    /** The last reading of one quantity at one place of an install. */
    public record LastReading(InstallId install, ReadingPoint reading) {}

    /** The picture of a gate. */
    public record Gate(UUID id, @Nullable String caption) {}
}
