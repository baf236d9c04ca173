package app.ramkeeper.identity.trail;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** What of the trail is shown; all of it stands in the address. */
record TrailFilter(
        @Nullable String table,
        @Nullable String row,
        @Nullable String who,
        @Nullable LocalDate from,
        @Nullable LocalDate until) {}
