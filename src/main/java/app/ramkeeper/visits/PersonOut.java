package app.ramkeeper.visits;

import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.PersonId;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** Somebody in the field who has not said that they are back. */
public record PersonOut(
        PersonId person,
        String name,
        @Nullable String phone,
        Instant leftAt,
        Instant dueBackAt,
        boolean late,
        @Nullable SiteId lastSite,
        @Nullable String lastSiteName) {}
