package app.ramkeeper.visits;

import app.ramkeeper.catalogue.TaskKindId;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.PersonId;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Asks for a visit on the plan.
 *
 * @param on the day, open while null
 * @param from the time of day, open while null
 * @param people who goes; the first leads
 * @param minutesByHand somebody typed the minutes, so that no plan makes them more by itself
 */
public record PlanVisit(
        SiteId site,
        VisitKind kind,
        @Nullable LocalDate on,
        @Nullable LocalTime from,
        int minutes,
        List<PersonId> people,
        List<Task> tasks,
        @Nullable String note,
        boolean minutesByHand) {

    /** Minutes by which a visit may start off the time that was agreed. */
    public static final int PUNCTUAL = 15;

    public PlanVisit {
        people = List.copyOf(people);
        tasks = List.copyOf(tasks);
    }

    /** A visit with minutes that nobody typed. */
    public PlanVisit(
            SiteId site,
            VisitKind kind,
            @Nullable LocalDate on,
            @Nullable LocalTime from,
            int minutes,
            List<PersonId> people,
            List<Task> tasks,
            @Nullable String note) {
        this(site, kind, on, from, minutes, people, tasks, note, false);
    }

    /** One service task that the visit is to answer. */
    public record Task(UUID task, InstallId install, TaskKindId kind) {}
}
