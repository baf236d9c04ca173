package app.ramkeeper.fleet;

import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A site of the register. */
@Entity
@Table(name = "sites")
class Site {

    @Id
    UUID id;

    @Version
    @Nullable
    Integer version;

    @Embedded
    SiteDetails details;

    @Nullable
    UUID mergedInto;

    @SuppressWarnings("NullAway.Init")
    protected Site() {}

    Site(UUID id, SiteDetails details) {
        this.id = id;
        this.details = details;
    }
}
