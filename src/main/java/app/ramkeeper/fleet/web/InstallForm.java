package app.ramkeeper.fleet.web;

import app.ramkeeper.fleet.InstallDetails;
import app.ramkeeper.shared.Uuids;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.PastOrPresent;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** An install as its form shows it; commissioningUnknown: at work since nobody knows when. */
record InstallForm(
        @Nullable UUID id,
        @Nullable Integer version,
        @Size(max = 60) @Nullable String reference,
        @NotBlank @Size(max = 200) @Nullable String name,
        @PastOrPresent @Nullable LocalDate commissionedOn,
        @Nullable Boolean commissioningUnknown,
        @Nullable LocalDate warrantyUntil) {

    static InstallForm blank() {
        return new InstallForm(Uuids.next(), null, null, null, null, null, null);
    }

    static InstallForm of(InstallDetails details, int version) {
        return new InstallForm(
                null,
                version,
                details.reference(),
                details.name(),
                details.commissionedOn(),
                !details.commissioningKnown(),
                details.warrantyUntil());
    }

    InstallDetails details() {
        boolean unknown = Boolean.TRUE.equals(commissioningUnknown) && commissionedOn == null;
        return new InstallDetails(reference, String.valueOf(name), commissionedOn, !unknown, warrantyUntil);
    }

    UUID idOrNew() {
        return id == null ? Uuids.next() : id;
    }

    int versionOrFirst() {
        return version == null ? 0 : version;
    }
}
