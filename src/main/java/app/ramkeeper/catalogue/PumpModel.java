package app.ramkeeper.catalogue;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashSet;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** A model of ram pump as its maker describes it. */
@Entity
@Table(name = "pump_models")
class PumpModel {

    @Id
    private UUID id;

    private String name;
    private @Nullable BigDecimal driveBoreMm;

    @Column(name = "fall_min_m")
    private @Nullable BigDecimal fallMinM;

    @Column(name = "fall_max_m")
    private @Nullable BigDecimal fallMaxM;

    @Column(name = "lift_max_m")
    private @Nullable BigDecimal liftMaxM;

    @Column(name = "drive_flow_min_l_min")
    private @Nullable BigDecimal driveFlowMinLMin;

    @Column(name = "drive_flow_max_l_min")
    private @Nullable BigDecimal driveFlowMaxLMin;

    private @Nullable BigDecimal maxPressureBar;
    private @Nullable BigDecimal massKg;

    @Enumerated(EnumType.STRING)
    private VesselKind vesselKind = VesselKind.BLADDER;

    private boolean snifter;
    private int deliveryValves = 1;
    private int wasteValves = 1;
    private @Nullable String notes;
    private @Nullable LocalDate withdrawnOn;

    @ElementCollection
    @CollectionTable(name = "pump_model_performance", joinColumns = @JoinColumn(name = "model_id"))
    private Set<Point> performance = new HashSet<>();

    @ElementCollection
    @CollectionTable(name = "pump_model_parts", joinColumns = @JoinColumn(name = "model_id"))
    private Set<Fit> parts = new HashSet<>();

    @Version
    private @Nullable Integer version;

    @Embeddable
    record Point(
            @Column(name = "fall_m") BigDecimal fallM,
            @Column(name = "lift_m") BigDecimal liftM,
            @Column(name = "drive_flow_l_min") BigDecimal driveFlowLMin,
            @Column(name = "delivered_l_min") BigDecimal deliveredLMin) {}

    @Embeddable
    record Fit(@Column(name = "part_id") UUID part, String position, BigDecimal quantity) {}

    @SuppressWarnings("NullAway.Init")
    protected PumpModel() {}

    PumpModel(PumpModelId id, PumpModelForm form) {
        this.id = id.value();
        this.name = Objects.requireNonNull(form.name());
        change(form);
    }

    final void change(PumpModelForm form) {
        name = Objects.requireNonNull(form.name());
        driveBoreMm = form.driveBoreMm();
        fallMinM = form.fallMinM();
        fallMaxM = form.fallMaxM();
        liftMaxM = form.liftMaxM();
        driveFlowMinLMin = form.driveFlowMinLMin();
        driveFlowMaxLMin = form.driveFlowMaxLMin();
        maxPressureBar = form.maxPressureBar();
        massKg = form.massKg();
        vesselKind = Objects.requireNonNull(form.vesselKind());
        snifter = Boolean.TRUE.equals(form.snifter());
        deliveryValves = form.deliveryValves() == null ? 1 : form.deliveryValves();
        wasteValves = form.wasteValves() == null ? 1 : form.wasteValves();
        notes = form.notes();
        Changes.replace(performance, points(form));
        Changes.replace(parts, fits(form));
    }

    private static Set<Point> points(PumpModelForm form) {
        return TaskKindForms.orEmpty(form.performance()).stream()
                .filter(row -> !row.isBlank())
                .map(row -> new Point(
                        plain(row.fallM()), plain(row.liftM()), plain(row.driveFlowLMin()), plain(row.deliveredLMin())))
                .collect(Collectors.toSet());
    }

    private static Set<Fit> fits(PumpModelForm form) {
        return TaskKindForms.orEmpty(form.parts()).stream()
                .filter(row -> row.part() != null)
                .map(row -> new Fit(
                        Objects.requireNonNull(row.part()),
                        Objects.requireNonNull(row.position()),
                        row.quantity() == null ? BigDecimal.ONE : plain(row.quantity())))
                .collect(Collectors.toSet());
    }

    private static BigDecimal plain(@Nullable BigDecimal number) {
        BigDecimal stripped = Objects.requireNonNull(number).stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }

    void withdraw(@Nullable LocalDate on) {
        withdrawnOn = on;
    }

    PumpModelForm form() {
        return new PumpModelForm(
                name,
                driveBoreMm,
                fallMinM,
                fallMaxM,
                liftMaxM,
                driveFlowMinLMin,
                driveFlowMaxLMin,
                maxPressureBar,
                massKg,
                vesselKind,
                snifter,
                deliveryValves,
                wasteValves,
                notes,
                performance.stream()
                        .sorted(Comparator.comparing(Point::fallM)
                                .thenComparing(Point::liftM)
                                .thenComparing(Point::driveFlowLMin))
                        .map(p -> new PumpModelForm.Performance(
                                p.fallM(), p.liftM(), p.driveFlowLMin(), p.deliveredLMin()))
                        .toList(),
                parts.stream()
                        .sorted(Comparator.comparing(Fit::position).thenComparing(Fit::part))
                        .map(f -> new PumpModelForm.PartFit(f.part(), f.position(), f.quantity()))
                        .toList(),
                version);
    }

    UUID id() {
        return id;
    }

    @Nullable
    LocalDate withdrawnOn() {
        return withdrawnOn;
    }
}
