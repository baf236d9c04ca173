package app.ramkeeper.catalogue;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.LocalDate;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A part that is kept, fitted and bought by its number. */
@Entity
@Table(name = "parts")
class Part {

    @Id
    private UUID id;

    private String number;
    private String name;
    private String unit;

    @Enumerated(EnumType.STRING)
    private PartKind kind;

    private boolean drinkingWaterFit;
    private @Nullable LocalDate withdrawnOn;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected Part() {}

    @SuppressWarnings("NullAway.Init")
    Part(PartId id, PartForm form) {
        this.id = id.value();
        change(form);
    }

    final void change(PartForm form) {
        number = Objects.requireNonNull(form.number());
        name = Objects.requireNonNull(form.name());
        unit = Objects.requireNonNull(form.unit());
        kind = Objects.requireNonNull(form.kind());
        drinkingWaterFit = Boolean.TRUE.equals(form.drinkingWaterFit());
    }

    void withdraw(@Nullable LocalDate on) {
        withdrawnOn = on;
    }

    PartForm form() {
        return new PartForm(number, name, unit, kind, drinkingWaterFit, version);
    }

    UUID id() {
        return id;
    }

    @Nullable
    LocalDate withdrawnOn() {
        return withdrawnOn;
    }
}
