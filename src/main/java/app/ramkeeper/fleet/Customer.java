package app.ramkeeper.fleet;

import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A customer of the register. */
@Entity
@Table(name = "customers")
class Customer {

    @Id
    UUID id;

    @Version
    @Nullable
    Integer version;

    @Embedded
    CustomerDetails details;

    @Nullable
    UUID mergedInto;

    @SuppressWarnings("NullAway.Init")
    protected Customer() {}

    Customer(UUID id, CustomerDetails details) {
        this.id = id;
        this.details = details;
    }
}
