package app.ramkeeper.quotes.offer;

import app.ramkeeper.shared.Uuids;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/** A discount as its page posts it: a share or an amount, of one group or, without one, of the whole quote. */
public record DiscountForm(
        @Nullable LineGroup lineGroup,

        @DecimalMin("0.01") @DecimalMax("100") @Digits(integer = 3, fraction = 2) @Nullable
        BigDecimal percent,

        @DecimalMin("0.01") @DecimalMax("9999999") @Digits(integer = 7, fraction = 2) @Nullable
        BigDecimal amount,

        @Size(max = 160) @Nullable String text) {

    Discount discount() {
        return new Discount(Uuids.next(), lineGroup, percent, amount, text);
    }
}
