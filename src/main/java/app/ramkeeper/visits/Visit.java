package app.ramkeeper.visits;

import app.ramkeeper.shared.Conflict;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** One attendance at a site on the plan. It guards its own steps: planned, then done, could not, or cancelled. */
@Entity
@Table(name = "visits")
class Visit {

    @Id
    private UUID id;

    private UUID siteId;

    @Enumerated(EnumType.STRING)
    private VisitKind kind;

    private @Nullable LocalDate plannedOn;

    @JdbcTypeCode(SqlTypes.LOCAL_TIME)
    private @Nullable LocalTime plannedFrom;

    private int minutes;

    private boolean minutesByHand;

    @Enumerated(EnumType.STRING)
    private Answer answer = Answer.NONE;

    private @Nullable LocalDate agreedOn;

    @JdbcTypeCode(SqlTypes.LOCAL_TIME)
    private @Nullable LocalTime agreedFrom;

    private boolean officeMustRing;

    private @Nullable String note;

    @Enumerated(EnumType.STRING)
    private VisitState state = VisitState.PLANNED;

    private @Nullable String cancelledReason;

    private @Nullable Instant plannedAt;

    /** When it last got another day, time, length, kind, note or other people. */
    private @Nullable Instant changedAt;

    @ElementCollection
    @CollectionTable(name = "visit_people", joinColumns = @JoinColumn(name = "visit_id"))
    private Set<Attendant> people = new HashSet<>();

    @ElementCollection
    @CollectionTable(name = "visit_tasks", joinColumns = @JoinColumn(name = "visit_id"))
    private Set<Task> tasks = new HashSet<>();

    @Version
    private @Nullable Integer version;

    /** Somebody who goes; one of them leads. */
    @Embeddable
    record Attendant(UUID personId, boolean lead) {}

    /** A service task that the visit is to answer. */
    @Embeddable
    record Task(UUID taskId, UUID installId, UUID taskKindId) {}

    @SuppressWarnings("NullAway") // for Hibernate
    protected Visit() {}

    Visit(VisitId id, PlanVisit plan, boolean officeMustRing, Instant now) {
        this.plannedAt = now;
        this.id = id.value();
        this.siteId = plan.site().value();
        this.kind = plan.kind();
        this.officeMustRing = officeMustRing;
        ask(plan.tasks());
        take(plan);
    }

    /** Takes day, time, people and note of a changed plan; a visit moved from what the customer agreed to or was told has to be told anew. */
    void change(PlanVisit plan, Instant now) {
        requirePlanned();
        List<@Nullable Object> before = plannedSo();
        take(plan);
        if (!plannedSo().equals(before)) {
            changedAt = now;
        }
    }

    /** What its people go by. */
    private List<@Nullable Object> plannedSo() {
        return Arrays.asList(plannedOn, plannedFrom, minutes, note, kind, Set.copyOf(people));
    }

    private void take(PlanVisit plan) {
        if (answer == Answer.CONFIRMED && agreedOn == null) {
            agree();
        }
        boolean sameDay = Objects.equals(plannedOn, plan.on());
        if (agreedOn == null ? !sameDay : !isAgreed(plan)) {
            answer = Answer.NONE;
        } else if (agreedOn != null && answer == Answer.NONE) {
            answer = Answer.CONFIRMED;
        }
        plannedOn = plan.on();
        plannedFrom = plan.from();
        if (minutes != plan.minutes()) {
            minutes = plan.minutes();
            minutesByHand = plan.minutesByHand();
        }
        note = plan.note();
        kind = plan.kind();
        people.clear();
        for (int i = 0; i < plan.people().size(); i++) {
            people.add(new Attendant(plan.people().get(i).value(), i == 0));
        }
    }

    /** Is asked to answer these tasks, and no others. */
    void ask(java.util.Collection<PlanVisit.Task> asked) {
        requirePlanned();
        Set<Task> now = asked.stream()
                .map(t -> new Task(t.task(), t.install().value(), t.kind().value()))
                .collect(java.util.stream.Collectors.toSet());
        tasks.retainAll(now);
        tasks.addAll(now);
    }

    void answered(Answer given) {
        requirePlanned();
        answer = given;
        if (given == Answer.CONFIRMED) {
            officeMustRing = false;
            agree();
        } else if (given != Answer.NO_ANSWER) {
            agreedOn = null;
            agreedFrom = null;
        }
    }

    private void agree() {
        agreedOn = plannedOn;
        agreedFrom = plannedFrom;
    }

    /** Whether the plan keeps to what the customer agreed to. */
    private boolean isAgreed(PlanVisit plan) {
        return Objects.equals(agreedOn, plan.on())
                && (agreedFrom == null
                        || (plan.from() != null
                                && Math.abs(Duration.between(agreedFrom, plan.from())
                                                .toMinutes())
                                        <= PlanVisit.PUNCTUAL));
    }

    void cancel(String reason) {
        requirePlanned();
        state = VisitState.CANCELLED;
        cancelledReason = reason;
    }

    void reported(ReportOutcome outcome) {
        state = outcome == ReportOutcome.COULD_NOT ? VisitState.COULD_NOT : VisitState.DONE;
    }

    private void requirePlanned() {
        switch (state) {
            case CANCELLED -> throw new Conflict("This visit was cancelled. Plan a new one.");
            case DONE, COULD_NOT -> throw new Conflict("This visit is over: its report is in the history.");
            case PLANNED -> {}
        }
    }

    @Nullable
    LocalDate plannedOn() {
        return plannedOn;
    }

    UUID siteId() {
        return siteId;
    }

    VisitState state() {
        return state;
    }

    int version() {
        return version == null ? 0 : version;
    }

    List<UUID> peopleIds() {
        return people.stream().map(Attendant::personId).toList();
    }
}
