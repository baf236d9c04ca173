package app.ramkeeper.visits;

import app.ramkeeper.catalogue.PartId;
import app.ramkeeper.catalogue.TaskKindId;
import app.ramkeeper.fleet.ComponentPosition;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.PumpId;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Measured;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Asks to put down what was done at one attendance at a site. The whole record is one report: form, phone and import
 * all send it, and sending the same again changes nothing.
 *
 * @param id made by whoever writes the report; an import makes it from its own reference
 * @param visit the planned visit it reports on, if there was a plan
 * @param supersedes the report that this one corrects and restates in full
 * @param people who was there; the first led
 * @param water samples and hygiene; a correction without it keeps what the corrected report had
 * @param commissioned what a commissioning was for; a correction without it keeps what the corrected report had
 */
public record RecordVisit(
        ReportId id,
        @Nullable VisitId visit,
        SiteId site,
        VisitKind kind,
        @Nullable ReportId supersedes,
        LocalDate attendedOn,
        @Nullable Instant startedAt,
        @Nullable Instant arrivedAt,
        @Nullable Instant leftAt,
        List<PersonId> people,
        ReportOutcome outcome,
        @Nullable Reason reason,
        @Nullable String note,
        boolean nobodyThere,
        @Nullable String customerName,
        ReportSource source,
        List<Work> works,
        List<Reading> readings,
        List<Finding> findings,
        List<PartUsed> parts,
        List<Photo> photos,
        List<FollowUp> followUps,

        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable WaterCare water,

        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable Commissioned commissioned) {

    public RecordVisit {
        people = List.copyOf(people);
        works = List.copyOf(works);
        readings = List.copyOf(readings);
        findings = List.copyOf(findings);
        parts = List.copyOf(parts);
        photos = List.copyOf(photos);
        followUps = List.copyOf(followUps);
    }

    /** The same report, of another site. */
    RecordVisit at(SiteId other) {
        return copy(other, works, commissioned);
    }

    /** The same report; where it does not say which install was commissioned, another one says it. */
    RecordVisit orCommissioned(@Nullable Commissioned other) {
        return commissioned == null ? copy(site, works, other) : this;
    }

    /** The same report with other works. */
    RecordVisit with(List<Work> other) {
        return copy(site, other, commissioned);
    }

    private RecordVisit copy(SiteId site, List<Work> works, @Nullable Commissioned commissioned) {
        return new RecordVisit(
                id,
                visit,
                site,
                kind,
                supersedes,
                attendedOn,
                startedAt,
                arrivedAt,
                leftAt,
                people,
                outcome,
                reason,
                note,
                nobodyThere,
                customerName,
                source,
                works,
                readings,
                findings,
                parts,
                photos,
                followUps,
                water,
                commissioned);
    }

    /**
     * The install that was put to work.
     *
     * @param setting the valve setting it was left and locked at
     * @param pump the pump that was put in, as its plate was read
     */
    public record Commissioned(
            @Nullable InstallId install,
            @Nullable String setting,

            @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable
            String pump) {}

    /**
     * What became of one task.
     *
     * @param task the service task it answers, if it was asked for
     * @param reason why it could not be done
     * @param lookAgainOn after "inspected good": when to look again
     * @param about the day is only roughly known
     */
    public record Work(
            InstallId install,
            @Nullable PumpId pump,
            TaskKindId kind,
            @Nullable UUID task,
            WorkOutcome outcome,
            @Nullable Reason reason,
            @Nullable LocalDate lookAgainOn,
            DoneBy by,
            boolean about,
            @Nullable String note) {}

    /**
     * A measured value as read.
     *
     * @param bucket the litres and seconds it was worked out from, where bucket and watch were used
     * @param asRead the writer was asked about the value and says that it is what the instrument showed
     * @param notComparable why it says nothing about the pump, such as a shut float
     */
    public record Reading(
            InstallId install,
            @Nullable PumpId pump,
            Quantity quantity,
            MeasuredAt place,
            Measured value,
            @Nullable Bucket bucket,
            @Nullable UUID instrument,
            boolean asRead,
            @Nullable String notComparable) {}

    /** Litres caught in so many seconds. */
    public record Bucket(BigDecimal litres, BigDecimal seconds) {}

    /** What was not right, why, and what was done about it. */
    public record Finding(
            @Nullable InstallId install,
            Symptom symptom,
            @Nullable String cause,
            @Nullable String action) {}

    /** A part that was fitted; text where the catalogue does not know it. */
    public record PartUsed(
            InstallId install,
            @Nullable PumpId pump,
            @Nullable PartId part,
            @Nullable String text,
            @Nullable ComponentPosition position,
            BigDecimal quantity,
            @Nullable String batch) {}

    /** A stored picture, named by the SHA-256 of its content in hexadecimal. */
    public record Photo(
            String sha256,
            @Nullable String caption,
            @Nullable Instant takenAt) {}

    /** Something left to do; promised if the customer was told so. */
    public record FollowUp(String text, @Nullable LocalDate dueOn, boolean promised) {}
}
