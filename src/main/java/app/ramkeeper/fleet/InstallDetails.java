package app.ramkeeper.fleet;

import jakarta.persistence.Embeddable;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * What the register knows about an install itself.
 *
 * @param reference the office's own number
 * @param commissionedOn the day it was handed over; absent when not yet, or when unknown
 * @param commissioningKnown false when it has been at work since before the register and nobody knows since when
 */
@Embeddable
public record InstallDetails(
        @Nullable String reference,
        String name,
        @Nullable LocalDate commissionedOn,
        boolean commissioningKnown,
        @Nullable LocalDate warrantyUntil) {

    /** An install at work since a known day. */
    public static InstallDetails commissioned(String name, LocalDate on) {
        return new InstallDetails(null, name, on, true, null);
    }
}
