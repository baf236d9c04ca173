package app.ramkeeper.fleet;

import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A service agreement with a customer. */
@Entity
@Table(name = "agreements")
class Agreement {

    @Id
    UUID id;

    @Version
    @Nullable
    Integer version;

    UUID customerId;

    @Embedded
    AgreementDetails details;

    @SuppressWarnings("NullAway.Init")
    protected Agreement() {}

    Agreement(UUID id, UUID customerId, AgreementDetails details) {
        this.id = id;
        this.customerId = customerId;
        this.details = details;
    }
}
