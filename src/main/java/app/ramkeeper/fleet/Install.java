package app.ramkeeper.fleet;

import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** An install of the register. */
@Entity
@Table(name = "installs")
class Install {

    @Id
    UUID id;

    @Version
    @Nullable
    Integer version;

    @Embedded
    InstallDetails details;

    UUID siteId;

    @Nullable
    LocalDate retiredOn;

    @SuppressWarnings("NullAway.Init")
    protected Install() {}

    Install(UUID id, UUID siteId, InstallDetails details) {
        this.id = id;
        this.siteId = siteId;
        this.details = details;
    }
}
