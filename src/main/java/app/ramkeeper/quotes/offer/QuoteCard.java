package app.ramkeeper.quotes.offer;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A quote's own words and its place in the register. */
public record QuoteCard(
        UUID id,
        @Nullable String number,
        @Nullable UUID enquiryId,
        @Nullable UUID customerId,
        @Nullable UUID siteId,
        String title,
        String customerName,
        @Nullable String address,
        @Nullable String email,
        @Nullable String phone,
        String place,
        Instant createdAt,
        String createdBy,
        int version) {

    /** The number, or that it has none yet. */
    public String name() {
        return number == null ? "Draft" : number;
    }
}
