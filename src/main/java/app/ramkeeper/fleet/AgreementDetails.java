package app.ramkeeper.fleet;

import jakarta.persistence.Embeddable;
import java.math.BigDecimal;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * What a service agreement says.
 *
 * @param untilDate the first day on which it no longer holds
 * @param price a year, without tax, in the company's currency; for the office only
 */
@Embeddable
public record AgreementDetails(
        @Nullable String number,
        LocalDate fromDate,
        @Nullable LocalDate untilDate,
        String covers,
        @Nullable BigDecimal price,
        @Nullable LocalDate renewalOn) {}
