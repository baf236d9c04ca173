package app.ramkeeper.catalogue;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/** A pump model as lists and forms of other features show it. */
public record PumpModelCard(
        PumpModelId id,
        String name,
        @Nullable BigDecimal driveBoreMm,
        @Nullable BigDecimal massKg,
        @Nullable BigDecimal maxPressureBar,
        VesselKind vesselKind,
        boolean snifter,
        int deliveryValves,
        int wasteValves) {}
