package app.ramkeeper.catalogue;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/** What the page of a part posts. */
public record PartForm(
        @NotBlank(message = "{part.number.missing}") @Size(max = 60) @Nullable
        String number,

        @NotBlank(message = "{part.name.missing}") @Size(max = 120) @Nullable
        String name,

        @NotBlank(message = "{part.unit.missing}") @Size(max = 20) @Nullable
        String unit,

        @NotNull(message = "{part.kind.missing}") @Nullable PartKind kind,
        @Nullable Boolean drinkingWaterFit,
        @Nullable Integer version) {

    static PartForm blank() {
        return new PartForm(null, null, "piece", null, false, null);
    }

    PartForm withVersion(@Nullable Integer saved) {
        return new PartForm(number, name, unit, kind, drinkingWaterFit, saved);
    }
}
