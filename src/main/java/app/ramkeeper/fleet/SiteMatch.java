package app.ramkeeper.fleet;

import org.jspecify.annotations.Nullable;

/** A site that a search found, with what tells it from its neighbours. */
public record SiteMatch(
        SiteId id,
        @Nullable String reference,
        String name,
        @Nullable String locality,
        @Nullable String customer,
        @Nullable String depot,
        long installs) {}
