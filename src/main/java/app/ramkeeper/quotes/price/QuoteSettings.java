package app.ramkeeper.quotes.price;

import jakarta.validation.constraints.AssertTrue;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** How quotes are reckoned; also what its page posts. */
public record QuoteSettings(
        @NotBlank @Size(max = 5) String currency,
        @NotNull TaxRounding taxRounding,

        @NotNull @DecimalMin("0") @DecimalMax("50") @Digits(integer = 2, fraction = 2)
        BigDecimal offCutPercent,

        @NotNull @Min(1) @Max(730) Integer validDays,

        @NotNull @DecimalMin("0") @DecimalMax("100") @Digits(integer = 3, fraction = 2)
        BigDecimal depositPercent,

        @NotNull @DecimalMin("0") @DecimalMax("100") @Digits(integer = 3, fraction = 2)
        BigDecimal stagePercent,

        @NotNull @DecimalMin("0") @DecimalMax("100") @Digits(integer = 3, fraction = 2)
        BigDecimal labourDays,

        @NotNull @DecimalMin("1") @DecimalMax("10000") @Digits(integer = 5, fraction = 2)
        BigDecimal metresADay,

        @Pattern(regexp = "[A-Za-z0-9-]{0,8}", message = "{prices.settings.prefix.wrong}") @Nullable
        String numberPrefix,

        @NotNull LocalDate billFrom,
        @Nullable Integer version) {

    /** Where tax is rounded to the cent, half up. */
    public enum TaxRounding {
        LINE,
        TOTAL
    }

    @AssertTrue(message = "{prices.settings.stages}")
    public boolean isStagesWithinWhole() {
        return depositPercent == null
                || stagePercent == null
                || depositPercent.add(stagePercent).compareTo(BigDecimal.valueOf(100)) <= 0;
    }
}
