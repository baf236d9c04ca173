package app.ramkeeper.fleet;

import jakarta.persistence.Embeddable;
import org.jspecify.annotations.Nullable;

/**
 * What the register knows about a customer.
 *
 * @param reference the office's own number
 * @param privateNotes for the office only
 */
@Embeddable
public record CustomerDetails(
        @Nullable String reference,
        String name,
        @Nullable String billingAddress,
        @Nullable String email,
        @Nullable String phone,
        @Nullable String privateNotes) {

    /** A customer of whom only the name is known. */
    public static CustomerDetails named(String name) {
        return new CustomerDetails(null, name, null, null, null, null);
    }

    CustomerDetails withPrivateNotes(@Nullable String notes) {
        return new CustomerDetails(reference, name, billingAddress, email, phone, notes);
    }
}
