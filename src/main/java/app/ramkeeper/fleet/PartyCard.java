package app.ramkeeper.fleet;

import java.math.BigDecimal;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** Who plays a part at a site, with the way to reach them. */
public record PartyCard(
        SitePart part,
        @Nullable CustomerId customer,
        @Nullable ContactId contact,
        String name,
        @Nullable String phone,
        @Nullable String email,
        @Nullable LocalDate from,
        @Nullable BigDecimal share) {}
