package app.ramkeeper.identity.trail;

import java.time.Instant;
import java.util.List;

/** One change as the page shows it. */
record Entry(
        long id,
        Instant at,
        String actor,
        String source,
        String table,
        String row,
        String operation,
        List<Change> changes) {

    /** One field, before and after; "–" where there was or is nothing. */
    record Change(String field, String before, String after) {}
}
