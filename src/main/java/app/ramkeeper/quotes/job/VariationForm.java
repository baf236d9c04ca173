package app.ramkeeper.quotes.job;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A variation, as its page posts it; less than nothing where something falls away. */
public record VariationForm(
        @NotBlank @Size(max = 1000) @Nullable String text,

        @NotNull @DecimalMin("-9999999") @DecimalMax("9999999") @Digits(integer = 7, fraction = 2) @Nullable
        BigDecimal net,

        @DecimalMin("-9999999") @DecimalMax("9999999") @Digits(integer = 7, fraction = 2) @Nullable
        BigDecimal cost,

        @NotNull @Nullable UUID tax) {}
