package app.ramkeeper.visits.calls;

import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.Symptom;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.format.annotation.DateTimeFormat;

/**
 * What is asked and said on the phone.
 *
 * @param id made with the empty form, so that a form sent twice is one call
 * @param q words to find the site by
 * @param placeText where it is, as long as the site is not found
 */
public record CallForm(
        @NotNull @Nullable UUID id,
        @Size(max = 100) @Nullable String q,
        @Nullable UUID site,
        @Size(max = 300) @Nullable String placeText,
        @Nullable UUID install,
        @Size(max = 200) @Nullable String caller,
        @Size(max = 60) @Nullable String phone,
        @NotNull @Nullable Symptom symptom,

        @DecimalMin("0") @DecimalMax("10000") @Nullable BigDecimal waterHoursLeft,

        @Nullable Boolean peopleDry,
        @Nullable Boolean stockDry,
        @Size(max = 4000) @Nullable String advice,
        @Size(max = 2000) @Nullable String promise,

        @DateTimeFormat(iso = DateTimeFormat.ISO.DATE_TIME) @Nullable
        LocalDateTime promisedBy,

        @Size(max = 10000) @Nullable String note,
        @Nullable Integer version) {

    static CallForm blank(@Nullable UUID site) {
        return new CallForm(
                Uuids.next(),
                null,
                site,
                null,
                null,
                null,
                null,
                null,
                null,
                false,
                false,
                null,
                null,
                null,
                null,
                null);
    }

    boolean dryPeople() {
        return Boolean.TRUE.equals(peopleDry);
    }

    boolean dryStock() {
        return Boolean.TRUE.equals(stockDry);
    }

    /** The same words, whatever the search box and the version say. */
    CallForm bare() {
        BigDecimal hours = waterHoursLeft == null ? null : waterHoursLeft.stripTrailingZeros();
        return new CallForm(
                id,
                null,
                site,
                placeText,
                install,
                caller,
                phone,
                symptom,
                hours,
                dryPeople(),
                dryStock(),
                advice,
                promise,
                promisedBy,
                note,
                null);
    }
}
