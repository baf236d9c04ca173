package app.ramkeeper.fleet;

import app.ramkeeper.catalogue.PumpModelId;
import app.ramkeeper.identity.DepotId;
import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Typed ids of other things in columns of type uuid. */
final class IdColumns {

    private IdColumns() {}

    /** A catchment's id. */
    @Converter(autoApply = true)
    static class OfCatchment implements AttributeConverter<CatchmentId, UUID> {
        @Override
        public @Nullable UUID convertToDatabaseColumn(@Nullable CatchmentId id) {
            return id == null ? null : id.value();
        }

        @Override
        public @Nullable CatchmentId convertToEntityAttribute(@Nullable UUID value) {
            return value == null ? null : new CatchmentId(value);
        }
    }

    /** A depot's id. */
    @Converter(autoApply = true)
    static class OfDepot implements AttributeConverter<DepotId, UUID> {
        @Override
        public @Nullable UUID convertToDatabaseColumn(@Nullable DepotId id) {
            return id == null ? null : id.value();
        }

        @Override
        public @Nullable DepotId convertToEntityAttribute(@Nullable UUID value) {
            return value == null ? null : new DepotId(value);
        }
    }

    /** A pump model's id. */
    @Converter(autoApply = true)
    static class OfPumpModel implements AttributeConverter<PumpModelId, UUID> {
        @Override
        public @Nullable UUID convertToDatabaseColumn(@Nullable PumpModelId id) {
            return id == null ? null : id.value();
        }

        @Override
        public @Nullable PumpModelId convertToEntityAttribute(@Nullable UUID value) {
            return value == null ? null : new PumpModelId(value);
        }
    }
}
