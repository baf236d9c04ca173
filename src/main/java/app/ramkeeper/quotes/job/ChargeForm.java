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
import org.springframework.validation.Errors;

/** Whether a visit is charged, as its page posts it. */
public record ChargeForm(
        @NotBlank @Size(max = 900) @Nullable String text,

        @DecimalMin("0") @DecimalMax("9999999") @Digits(integer = 7, fraction = 2) @Nullable
        BigDecimal net,

        @NotNull @Nullable UUID tax,
        @Size(max = 300) @Nullable String waivedBecause) {

    void check(Errors errors) {
        if (net == null && waivedBecause == null && !errors.hasFieldErrors("net")) {
            errors.rejectValue("net", "billing.net.missing");
        }
        if (net != null && net.signum() > 0 && waivedBecause != null) {
            errors.rejectValue("waivedBecause", "billing.both");
        }
    }
}
