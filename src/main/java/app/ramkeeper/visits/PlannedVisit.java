package app.ramkeeper.visits;

import app.ramkeeper.fleet.SiteId;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A visit of the plan as lists show it.
 *
 * @param people names of those who go, the lead first
 * @param tasks names of the kinds of task it is to answer
 * @param attempts tries to reach the customer
 */
public record PlannedVisit(
        VisitId id,
        SiteId site,
        String siteName,
        @Nullable String locality,
        VisitKind kind,
        VisitState state,
        @Nullable LocalDate on,
        @Nullable LocalTime from,
        int minutes,
        List<String> people,
        List<String> tasks,
        Answer answer,
        int attempts,
        boolean officeMustRing,
        @Nullable String note) {}
