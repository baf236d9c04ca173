package app.ramkeeper.fleet;

import app.ramkeeper.catalogue.PumpModelId;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** A pump that stands in an install today. */
public record FittedPump(
        PumpId id,
        @Nullable String serial,
        @Nullable PumpModelId model,
        @Nullable String modelName,
        int placeNo,
        @Nullable LocalDate fittedOn,
        boolean loan) {}
