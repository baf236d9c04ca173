package app.ramkeeper.fleet;

import app.ramkeeper.catalogue.PumpModelId;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A pump with the place where it is today.
 *
 * @param place absent: nobody knows
 * @param install the install it stands in, if it does
 */
public record PumpCard(
        PumpId id,
        @Nullable String serial,
        @Nullable PumpModelId model,
        @Nullable String modelName,
        Ownership ownership,
        @Nullable LocalDate retiredOn,
        @Nullable LocalDate warrantyUntil,
        @Nullable PumpPlace place,
        @Nullable InstallId install,
        @Nullable Integer placeNo,
        @Nullable LocalDate since) {}
