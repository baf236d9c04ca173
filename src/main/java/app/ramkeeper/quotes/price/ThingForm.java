package app.ramkeeper.quotes.price;

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

/** What the page of a priced thing posts; which fields count hangs on its kind. */
public record ThingForm(
        @NotBlank(message = "{prices.code.missing}") @Size(max = 40) @Nullable
        String code,

        @NotNull(message = "{prices.kind.missing}") @Nullable
        PriceKind kind,

        @NotBlank(message = "{prices.name.missing}") @Size(max = 120) @Nullable
        String name,

        @NotBlank(message = "{prices.unit.missing}") @Size(max = 20) @Nullable
        String unit,

        @Nullable UUID modelId,
        @Nullable PipeUse pipeUse,
        app.ramkeeper.sizing.pipe.@Nullable PipeMaterial material,
        @Size(max = 40) @Nullable String series,

        @DecimalMin(value = "0", inclusive = false) @DecimalMax("2000") @Digits(integer = 4, fraction = 2) @Nullable
        BigDecimal outsideMm,

        @DecimalMin(value = "0", inclusive = false) @DecimalMax("200") @Digits(integer = 3, fraction = 2) @Nullable
        BigDecimal wallMm,

        @DecimalMin(value = "0", inclusive = false) @DecimalMax("400") @Digits(integer = 3, fraction = 2) @Nullable
        BigDecimal classBar,

        @DecimalMin(value = "0", inclusive = false) @DecimalMax("1000") @Digits(integer = 4, fraction = 2) @Nullable
        BigDecimal soldInM,

        @DecimalMin(value = "0", inclusive = false) @DecimalMax("1000000") @Digits(integer = 7, fraction = 2) @Nullable
        BigDecimal litres,

        @DecimalMin(value = "0", inclusive = false) @DecimalMax("400") @Digits(integer = 3, fraction = 2) @Nullable
        BigDecimal ratingBar,

        @Nullable Boolean drinkingWaterFit,
        @Nullable Integer version) {

    static ThingForm blank(PriceKind kind) {
        String unit = switch (kind) {
            case PIPE -> "m";
            case LABOUR -> "day";
            case TRAVEL -> "km";
            case TAX -> "%";
            default -> "piece";
        };
        return new ThingForm(
                null, kind, null, unit, null, null, null, null, null, null, null, null, null, null, false, null);
    }

    ThingForm withVersion(@Nullable Integer saved) {
        return new ThingForm(
                code,
                kind,
                name,
                unit,
                modelId,
                pipeUse,
                material,
                series,
                outsideMm,
                wallMm,
                classBar,
                soldInM,
                litres,
                ratingBar,
                drinkingWaterFit,
                saved);
    }

    /** Puts what is missing for its kind beside its field. */
    void check(Errors errors) {
        if (kind == null) {
            return;
        }
        need(errors, kind.isOfModel(), "modelId", modelId, "prices.model.missing");
        boolean pipe = kind == PriceKind.PIPE;
        need(errors, pipe, "pipeUse", pipeUse, "prices.pipe.missing");
        need(errors, pipe, "material", material, "prices.pipe.missing");
        need(errors, pipe, "series", series, "prices.pipe.missing");
        need(errors, pipe, "outsideMm", outsideMm, "prices.pipe.missing");
        need(errors, pipe, "wallMm", wallMm, "prices.pipe.missing");
        need(errors, pipe, "classBar", classBar, "prices.pipe.missing");
        boolean vessel = kind == PriceKind.VESSEL;
        need(errors, vessel || kind == PriceKind.TANK, "litres", litres, "prices.litres.missing");
        need(errors, vessel, "ratingBar", ratingBar, "prices.rating.missing");
        if (outsideMm != null
                && wallMm != null
                && wallMm.multiply(BigDecimal.valueOf(2)).compareTo(outsideMm) >= 0) {
            errors.rejectValue("wallMm", "prices.pipe.bore");
        }
    }

    private static void need(Errors errors, boolean needed, String field, @Nullable Object value, String message) {
        if (needed && value == null && !errors.hasFieldErrors(field)) {
            errors.rejectValue(field, message);
        }
    }
}
