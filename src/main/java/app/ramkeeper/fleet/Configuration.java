package app.ramkeeper.fleet;

import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** How an install was laid out and set from a day on. */
@Entity
@Table(name = "configurations")
class Configuration {

    @Id
    UUID id;

    @Version
    @Nullable
    Integer version;

    UUID installId;

    @Nullable
    LocalDate fromDate;

    @Nullable
    LocalDate untilDate;

    @Nullable
    String reason;

    @Embedded
    @Nullable
    ConfigurationDetails details;

    @SuppressWarnings("NullAway.Init")
    protected Configuration() {}

    Configuration(
            UUID id,
            UUID installId,
            @Nullable LocalDate fromDate,
            @Nullable String reason,
            ConfigurationDetails details) {
        this.id = id;
        this.installId = installId;
        this.fromDate = fromDate;
        this.reason = reason;
        this.details = details;
    }

    /** Closes it; the next one begins on that day. */
    void close(LocalDate on) {
        this.untilDate = on;
    }
}
