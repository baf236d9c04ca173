package app.ramkeeper.catalogue;

import app.ramkeeper.shared.Uuids;
import java.util.UUID;

/** Identifies a pump model. */
public record PumpModelId(UUID value) {

    public static PumpModelId next() {
        return new PumpModelId(Uuids.next());
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
