package app.ramkeeper.fleet;

import java.time.LocalDate;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Part of a site becomes a site of its own with some of the installs; access, hazards and parties go along.
 *
 * @param newOwner who owns the new site from that day; absent: the same parties
 */
public record SplitSite(
        SiteId site,
        String newName,
        Set<InstallId> installs,
        LocalDate on,
        @Nullable CustomerId newOwner) {}
