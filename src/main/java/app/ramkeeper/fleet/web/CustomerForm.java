package app.ramkeeper.fleet.web;

import app.ramkeeper.fleet.CustomerDetails;
import app.ramkeeper.shared.Uuids;
import jakarta.validation.constraints.Email;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A customer as its form shows it. */
record CustomerForm(
        @Nullable UUID id,
        @Nullable Integer version,
        @Size(max = 60) @Nullable String reference,
        @NotBlank @Size(max = 200) @Nullable String name,
        @Size(max = 1000) @Nullable String billingAddress,
        @Size(max = 254) @Email @Nullable String email,
        @Size(max = 60) @Nullable String phone,
        @Size(max = 10000) @Nullable String privateNotes) {

    static CustomerForm blank() {
        return new CustomerForm(Uuids.next(), null, null, null, null, null, null, null);
    }

    static CustomerForm of(CustomerDetails details, int version) {
        return new CustomerForm(
                null,
                version,
                details.reference(),
                details.name(),
                details.billingAddress(),
                details.email(),
                details.phone(),
                details.privateNotes());
    }

    CustomerDetails details() {
        return new CustomerDetails(reference, String.valueOf(name), billingAddress, email, phone, privateNotes);
    }

    UUID idOrNew() {
        return id == null ? Uuids.next() : id;
    }

    int versionOrFirst() {
        return version == null ? 0 : version;
    }
}
