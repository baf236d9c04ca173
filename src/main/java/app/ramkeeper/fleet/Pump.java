package app.ramkeeper.fleet;

import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A pump with its serial. */
@Entity
@Table(name = "pumps")
class Pump {

    @Id
    UUID id;

    @Version
    @Nullable
    Integer version;

    @Embedded
    PumpDetails details;

    @Nullable
    LocalDate retiredOn;

    @SuppressWarnings("NullAway.Init")
    protected Pump() {}

    Pump(UUID id, PumpDetails details) {
        this.id = id;
        this.details = details;
    }
}
