package app.ramkeeper.fleet;

import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A person outside the company. */
@Entity
@Table(name = "contacts")
class Contact {

    @Id
    UUID id;

    @Version
    @Nullable
    Integer version;

    @Embedded
    ContactDetails details;

    @SuppressWarnings("NullAway.Init")
    protected Contact() {}

    Contact(UUID id, ContactDetails details) {
        this.id = id;
        this.details = details;
    }
}
