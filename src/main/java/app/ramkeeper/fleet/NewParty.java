package app.ramkeeper.fleet;

import java.math.BigDecimal;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * Somebody takes a part at a site: a customer or a contact, one of the two.
 *
 * @param from the first day; absent: since before the register
 * @param share in percent, where several share the part
 */
public record NewParty(
        SitePart part,
        @Nullable CustomerId customer,
        @Nullable ContactId contact,
        @Nullable LocalDate from,
        @Nullable BigDecimal share) {

    public NewParty {
        if ((customer == null) == (contact == null)) {
            throw new IllegalArgumentException("A party is a customer or a contact");
        }
    }

    /** A customer who has played the part since before the register. */
    public static NewParty of(SitePart part, CustomerId customer) {
        return new NewParty(part, customer, null, null, null);
    }
}
