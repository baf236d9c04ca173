package app.ramkeeper.catalogue;

import static app.ramkeeper.catalogue.TaskKindForm.orZero;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.MapKeyColumn;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A kind of service work and all that sets its dates. */
@Entity
@Table(name = "task_kinds")
class TaskKind {

    @Id
    private UUID id;

    private String code;
    private String name;
    private @Nullable String description;

    @Enumerated(EnumType.STRING)
    private Scope scope;

    @Enumerated(EnumType.STRING)
    private Schedule schedule;

    private int intervalMonths;
    private int intervalDays;

    @Enumerated(EnumType.STRING)
    private Life life = Life.CALENDAR;

    private int earlyDays;
    private int lateDays;
    private int graceDays;
    private @Nullable Integer afterChangeDays;
    private int minutes;
    private int crew = 1;
    private @Nullable Integer seasonMonth;
    private @Nullable Integer seasonDay;
    private BigDecimal weight = BigDecimal.ONE;
    private boolean watched;
    private boolean drinkingWater;
    private @Nullable LocalDate withdrawnOn;

    @ElementCollection
    @CollectionTable(name = "task_kind_includes", joinColumns = @JoinColumn(name = "task_kind_id"))
    @Column(name = "included_id")
    private Set<UUID> includes = new HashSet<>();

    @ElementCollection
    @CollectionTable(name = "task_kind_skills", joinColumns = @JoinColumn(name = "task_kind_id"))
    @Column(name = "skill")
    private Set<String> skills = new HashSet<>();

    @ElementCollection
    @CollectionTable(name = "task_intervals", joinColumns = @JoinColumn(name = "task_kind_id"))
    @MapKeyColumn(name = "model_id")
    private Map<UUID, ModelInterval> byModel = new HashMap<>();

    @ElementCollection
    @CollectionTable(name = "water_factors", joinColumns = @JoinColumn(name = "task_kind_id"))
    @MapKeyColumn(name = "water_class")
    @Column(name = "factor")
    private Map<String, BigDecimal> byWater = new HashMap<>();

    @ElementCollection
    @CollectionTable(name = "task_kind_parts", joinColumns = @JoinColumn(name = "task_kind_id"))
    private Set<PartNeed> parts = new HashSet<>();

    @Version
    private @Nullable Integer version;

    @Embeddable
    record ModelInterval(int intervalMonths, int intervalDays) {}

    /** A part to bring; with a position, such a part fitted there counts as the task done. */
    @Embeddable
    record PartNeed(@Enumerated(EnumType.STRING) PartKind partKind, String position, BigDecimal quantity) {}

    @SuppressWarnings("NullAway.Init")
    protected TaskKind() {}

    TaskKind(TaskKindId id, String code, TaskKindForm form) {
        this.id = id.value();
        this.code = code;
        this.scope = Objects.requireNonNull(form.scope());
        this.schedule = Objects.requireNonNull(form.schedule());
        this.name = Objects.requireNonNull(form.name());
        change(form);
    }

    /** Takes over what was typed; scope and schedule stay as they were made. */
    final void change(TaskKindForm form) {
        name = Objects.requireNonNull(form.name());
        description = form.description();
        intervalMonths = schedule == Schedule.SEASON ? 0 : orZero(form.intervalMonths());
        intervalDays = schedule == Schedule.SEASON ? 0 : orZero(form.intervalDays());
        life = Objects.requireNonNull(form.life());
        earlyDays = orZero(form.earlyDays());
        lateDays = orZero(form.lateDays());
        graceDays = orZero(form.graceDays());
        afterChangeDays = form.afterChangeDays();
        minutes = orZero(form.minutes());
        crew = form.crew() == null ? 1 : form.crew();
        weight = form.weight() == null ? BigDecimal.ONE : form.weight();
        watched = Boolean.TRUE.equals(form.watched());
        drinkingWater = Boolean.TRUE.equals(form.drinkingWater());
        MonthDay season = schedule == Schedule.SEASON ? form.season() : null;
        seasonMonth = season == null ? null : season.getMonthValue();
        seasonDay = season == null ? null : season.getDayOfMonth();
        Changes.replace(includes, new HashSet<>(form.includeList()));
        Changes.replace(skills, new HashSet<>(form.skillList()));
        Changes.replace(byModel, TaskKindForms.models(form));
        Changes.replace(byWater, TaskKindForms.waters(form));
        Changes.replace(parts, TaskKindForms.parts(form));
    }

    void withdraw(@Nullable LocalDate on) {
        withdrawnOn = on;
    }

    UUID id() {
        return id;
    }

    String code() {
        return code;
    }

    String name() {
        return name;
    }

    @Nullable
    String description() {
        return description;
    }

    BigDecimal weight() {
        return weight;
    }

    int minutes() {
        return minutes;
    }

    int crew() {
        return crew;
    }

    Set<UUID> includes() {
        return Set.copyOf(includes);
    }

    Set<String> skills() {
        return Set.copyOf(skills);
    }

    Set<PartNeed> parts() {
        return Set.copyOf(parts);
    }

    @Nullable
    LocalDate withdrawnOn() {
        return withdrawnOn;
    }

    @Nullable
    Integer version() {
        return version;
    }

    /** The same as other features know it. */
    TaskTerms terms() {
        Map<UUID, Interval> models = new HashMap<>();
        byModel.forEach((model, own) -> models.put(model, new Interval(own.intervalMonths(), own.intervalDays())));
        return new TaskTerms(
                new TaskKindId(id),
                code,
                name,
                scope,
                schedule,
                new Interval(intervalMonths, intervalDays),
                life,
                earlyDays,
                lateDays,
                graceDays,
                afterChangeDays,
                seasonMonth == null || seasonDay == null ? null : MonthDay.of(seasonMonth, seasonDay),
                drinkingWater,
                watched,
                withdrawnOn,
                models,
                Map.copyOf(byWater));
    }
}
