package app.ramkeeper.quotes.offer;

import java.math.BigDecimal;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * One line of a quote.
 *
 * @param note how the quantity came about
 * @param price without tax for one unit; null while nobody has priced it
 * @param cost of one unit to the company; never on a customer's copy
 */
public record QuoteLine(
        UUID id,
        LineGroup lineGroup,
        String text,
        @Nullable String note,
        BigDecimal quantity,
        String unit,
        @Nullable BigDecimal price,
        @Nullable BigDecimal cost,
        BigDecimal discountPercent,
        String taxName,
        BigDecimal taxPercent,
        @Nullable UUID thingId,
        boolean byHand,
        int version) {

    /** What it comes to without tax. */
    public BigDecimal amount() {
        return Reckoning.amount(this);
    }

    /** What it costs the company. */
    public BigDecimal costs() {
        return Reckoning.cost(this);
    }
}
