package app.ramkeeper.visits;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.SiteId;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A report with all that hangs on it, as pages show it. */
public record ReportView(
        ReportId id,
        @Nullable VisitId visit,
        SiteId site,
        String siteName,
        VisitKind kind,
        LocalDate on,
        @Nullable Instant startedAt,
        @Nullable Instant arrivedAt,
        @Nullable Instant leftAt,
        Instant recordedAt,
        String recordedBy,
        ReportOutcome outcome,
        @Nullable Reason reason,
        @Nullable String note,
        boolean nobodyThere,
        @Nullable String customerName,
        ReportSource source,
        @Nullable ReportId supersedes,
        @Nullable ReportId supersededBy,
        @Nullable Commissioned commissioned,
        List<String> people,
        List<Work> works,
        List<Reading> readings,
        List<Finding> findings,
        List<Part> parts,
        List<Photo> photos,
        List<FollowUp> followUps) {

    /** The install that was put to work, and the valve setting it was left at. */
    public record Commissioned(
            @Nullable InstallId install,
            @Nullable String installName,
            @Nullable String setting) {}

    public record Work(
            InstallId install,
            String installName,
            String kind,
            WorkOutcome outcome,
            @Nullable Reason reason,
            @Nullable LocalDate lookAgainOn,
            DoneBy by,
            boolean about,
            @Nullable String note) {}

    public record Reading(
            InstallId install,
            String installName,
            Quantity quantity,
            MeasuredAt place,
            BigDecimal value,
            String unitSymbol,
            double si,
            @Nullable BigDecimal litres,
            @Nullable BigDecimal seconds,
            @Nullable String instrument,
            boolean asRead,
            boolean comparable,
            @Nullable String notComparableReason) {}

    public record Finding(
            @Nullable InstallId install,
            @Nullable String installName,
            Symptom symptom,
            @Nullable String cause,
            @Nullable String action) {}

    public record Part(
            InstallId install,
            String installName,
            String name,
            BigDecimal quantity,
            @Nullable String position,
            @Nullable String batch) {}

    public record Photo(
            UUID id, @Nullable String caption, @Nullable Instant takenAt) {}

    public record FollowUp(
            UUID id,
            String text,
            @Nullable LocalDate dueOn,
            boolean promised,
            @Nullable LocalDate doneOn) {}
}
