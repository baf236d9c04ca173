package app.ramkeeper.field;

import app.ramkeeper.fleet.ComponentPosition;
import app.ramkeeper.shared.Unit;
import app.ramkeeper.visits.DoneBy;
import app.ramkeeper.visits.MeasuredAt;
import app.ramkeeper.visits.Quantity;
import app.ramkeeper.visits.Reason;
import app.ramkeeper.visits.ReportOutcome;
import app.ramkeeper.visits.Symptom;
import app.ramkeeper.visits.VisitKind;
import app.ramkeeper.visits.WorkOutcome;
import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A visit as a phone writes it, edition 1. What a newer or older page adds is kept in the entry's text and not refused, so
 * fields may be added and never change their meaning.
 *
 * @param photos how many photos will follow
 * @param checklist which list was worked through
 * @param checks the answers to it
 * @param cautions what was acknowledged
 * @param steps valve settings tried, as typed
 * @param dryFlow flow of the dry month, l/min, as typed
 * @param dryFrom from when the setting for the dry month is set, if two were agreed on
 * @param leftSetting the valve setting it was locked at
 * @param install the one that was commissioned
 * @param pump the pump put in where the register knows none, as its plate was read
 */
@JsonIgnoreProperties(ignoreUnknown = true)
public record PhoneVisit(
        int v,
        UUID id,
        @Nullable UUID visit,
        UUID site,
        VisitKind kind,
        LocalDate on,
        @Nullable Instant startedAt,
        @Nullable Instant arrivedAt,
        @Nullable Instant leftAt,
        @Nullable List<UUID> people,
        ReportOutcome outcome,
        @Nullable Reason reason,
        @Nullable String note,
        boolean nobodyThere,
        @Nullable String customerName,
        @Nullable List<Work> works,
        @Nullable List<Reading> readings,
        @Nullable List<Finding> findings,
        @Nullable List<Part> parts,
        @Nullable List<FollowUp> followUps,
        int photos,
        @Nullable UUID checklist,
        @Nullable List<CheckItem> checks,
        @Nullable List<String> cautions,
        @Nullable List<Step> steps,
        @Nullable String dryFlow,
        @Nullable LocalDate dryFrom,
        @Nullable LocalDate dryUntil,
        @Nullable Water water,
        @Nullable String leftSetting,
        @Nullable UUID install,
        @Nullable String pump) {

    public PhoneVisit {
        require(id, site, kind, on, outcome);
        if (people != null) {
            require(people.toArray());
        }
    }

    /** A phone always writes these. */
    private static void require(@Nullable Object... values) {
        for (Object value : values) {
            Objects.requireNonNull(value);
        }
    }

    @JsonIgnoreProperties(ignoreUnknown = true)
    public record Work(
            UUID install,
            @Nullable UUID pump,
            UUID kind,
            @Nullable UUID task,
            WorkOutcome outcome,
            @Nullable Reason reason,
            @Nullable LocalDate lookAgainOn,
            @Nullable DoneBy by,
            @Nullable String note) {

        public Work {
            require(install, kind, outcome);
        }
    }

    @JsonIgnoreProperties(ignoreUnknown = true)
    public record Reading(
            UUID install,
            @Nullable UUID pump,
            Quantity quantity,
            MeasuredAt place,
            BigDecimal value,
            Unit unit,
            boolean asRead,
            @Nullable Runs runs,
            @Nullable String notComparable) {

        public Reading {
            require(install, quantity, place, value, unit);
        }
    }

    /** How long the bucket took to fill, run by run. */
    @JsonIgnoreProperties(ignoreUnknown = true)
    public record Runs(@Nullable Double litres, @Nullable List<Double> seconds) {}

    @JsonIgnoreProperties(ignoreUnknown = true)
    public record Finding(
            @Nullable UUID install,
            Symptom symptom,
            @Nullable String cause,
            @Nullable String action) {

        public Finding {
            require(symptom);
        }
    }

    @JsonIgnoreProperties(ignoreUnknown = true)
    public record Part(
            UUID install,
            @Nullable UUID pump,
            @Nullable UUID part,
            @Nullable String text,
            @Nullable ComponentPosition position,
            BigDecimal quantity,
            @Nullable String batch) {

        public Part {
            require(install, quantity);
        }
    }

    @JsonIgnoreProperties(ignoreUnknown = true)
    public record FollowUp(String text, @Nullable LocalDate dueOn, boolean promised) {}

    /**
     * Sample, disinfection and cleaning.
     *
     * @param sample the number at the laboratory
     * @param result what is said of it in words
     * @param takenTime by the phone, as hours:minutes
     * @param isolated the pump was shut off from where it was dosed
     * @param notIsolated why it was not
     * @param more samples after the first
     * @param cleaned how boots and tools were cleaned before the next catchment
     */
    @JsonIgnoreProperties(ignoreUnknown = true)
    public record Water(
            @Nullable String sample,
            @Nullable String where,
            @Nullable String result,
            @Nullable LocalTime takenTime,
            @Nullable String takenBy,
            @Nullable String laboratory,
            @Nullable List<WaterResult> results,
            @Nullable LocalDate next,
            @Nullable String product,
            @Nullable String strength,
            @Nullable Integer contactMinutes,
            @Nullable String flushed,
            boolean isolated,
            @Nullable String notIsolated,
            @Nullable String cleaned,
            @Nullable List<WaterSample> more) {}

    /** One more sample of the same visit; the words are those of the first. */
    @JsonIgnoreProperties(ignoreUnknown = true)
    public record WaterSample(
            @Nullable String sample,
            @Nullable String where,
            @Nullable String result,
            @Nullable LocalTime takenTime,
            @Nullable String laboratory,
            @Nullable List<WaterResult> results,
            @Nullable LocalDate next) {}

    /** What the laboratory, or a kit on the spot, found. */
    @JsonIgnoreProperties(ignoreUnknown = true)
    public record WaterResult(
            @Nullable String parameter,
            @Nullable String value,
            @Nullable String unit) {}

    /** One step of a guided list: ticked, or why not. */
    @JsonIgnoreProperties(ignoreUnknown = true)
    public record CheckItem(
            String code, boolean done, @Nullable String why) {}

    /** A valve setting with what was measured at it, l/min, as typed. */
    @JsonIgnoreProperties(ignoreUnknown = true)
    public record Step(
            @Nullable String setting,
            @Nullable String drive,
            @Nullable String delivered) {}
}
