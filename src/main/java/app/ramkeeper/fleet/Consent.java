package app.ramkeeper.fleet;

import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A consent of a site. */
@Entity
@Table(name = "consents")
class Consent {

    @Id
    UUID id;

    @Version
    @Nullable
    Integer version;

    UUID siteId;

    @Embedded
    ConsentDetails details;

    @SuppressWarnings("NullAway.Init")
    protected Consent() {}

    Consent(UUID id, UUID siteId, ConsentDetails details) {
        this.id = id;
        this.siteId = siteId;
        this.details = details;
    }
}
