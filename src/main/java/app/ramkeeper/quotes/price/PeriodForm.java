package app.ramkeeper.quotes.price;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.NotNull;
import java.math.BigDecimal;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.springframework.validation.Errors;

/** A price and the days it holds, as its page posts it. */
public record PeriodForm(
        @NotNull(message = "{prices.from.missing}") @Nullable
        LocalDate fromDate,

        @Nullable LocalDate untilDate,

        @NotNull(message = "{prices.price.missing}")
        @DecimalMin(value = "0", message = "{prices.price.negative}")
        @DecimalMax("9999999")
        @Digits(integer = 7, fraction = 4)
        @Nullable
        BigDecimal price,

        @DecimalMin(value = "0", message = "{prices.price.negative}")
        @DecimalMax("9999999")
        @Digits(integer = 7, fraction = 4)
        @Nullable
        BigDecimal cost) {

    /** Puts a span that ends before it begins beside its field. */
    void check(Errors errors) {
        if (fromDate != null && untilDate != null && untilDate.isBefore(fromDate)) {
            errors.rejectValue("untilDate", "prices.dates.order");
        }
    }
}
