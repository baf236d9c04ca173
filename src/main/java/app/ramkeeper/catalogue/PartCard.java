package app.ramkeeper.catalogue;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/** A part of the catalogue; with a position and a quantity where a pump model or a task asks for it. */
public record PartCard(
        PartId id,
        String number,
        String name,
        String unit,
        PartKind kind,
        boolean drinkingWaterFit,
        @Nullable String position,
        @Nullable BigDecimal quantity) {}
