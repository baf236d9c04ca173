package app.ramkeeper.quotes.offer;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A line as its page posts it. */
public record LineForm(
        @NotNull @Nullable LineGroup lineGroup,
        @NotBlank @Size(max = 300) @Nullable String text,
        @Size(max = 300) @Nullable String note,

        @NotNull @DecimalMin("0") @DecimalMax("999999") @Digits(integer = 6, fraction = 3) @Nullable
        BigDecimal quantity,

        @NotBlank @Size(max = 20) @Nullable String unit,

        @NotNull @DecimalMin("0") @DecimalMax("9999999") @Digits(integer = 7, fraction = 4) @Nullable
        BigDecimal price,

        @DecimalMin("0") @DecimalMax("9999999") @Digits(integer = 7, fraction = 4) @Nullable
        BigDecimal cost,

        @DecimalMin("0") @DecimalMax("100") @Digits(integer = 3, fraction = 2) @Nullable
        BigDecimal discountPercent,

        @NotNull @Nullable UUID tax,
        @Nullable Integer version) {}
