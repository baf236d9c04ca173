package app.ramkeeper.quotes.offer;

import java.math.BigDecimal;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What is taken off: either a share or an amount.
 *
 * @param lineGroup the group it is taken off; null for the whole quote
 * @param text why, for the customer to read
 */
public record Discount(
        UUID id,
        @Nullable LineGroup lineGroup,
        @Nullable BigDecimal percent,
        @Nullable BigDecimal amount,
        @Nullable String text) {

    boolean covers(QuoteLine line) {
        return lineGroup == null || lineGroup == line.lineGroup();
    }
}
