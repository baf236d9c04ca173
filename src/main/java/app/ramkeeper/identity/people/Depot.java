package app.ramkeeper.identity.people;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A place of the company's own: people and vans belong to it, rounds start from it. */
@Entity
@Table(name = "depots")
class Depot {

    @Id
    private UUID id;

    @Version
    private @Nullable Integer version;

    private String name;
    private @Nullable String address;
    private @Nullable Double latitude;
    private @Nullable Double longitude;

    @Column(name = "altitude_m")
    private @Nullable Double altitudeM;

    @SuppressWarnings("NullAway.Init") // for Hibernate
    protected Depot() {}

    Depot(UUID id, DepotForm form) {
        this.id = id;
        this.name = form.name();
        change(form);
    }

    final void change(DepotForm form) {
        name = form.name();
        address = form.address();
        latitude = form.latitude();
        longitude = form.longitude();
        altitudeM = form.altitudeM();
    }

    int version() {
        return version == null ? 0 : version;
    }

    DepotForm form() {
        return new DepotForm(name, address, latitude, longitude, altitudeM, version());
    }
}
