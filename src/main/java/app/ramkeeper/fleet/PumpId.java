package app.ramkeeper.fleet;

import app.ramkeeper.shared.Uuids;
import java.util.UUID;

/** Identifies a pump. */
public record PumpId(UUID value) {

    public static PumpId next() {
        return new PumpId(Uuids.next());
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
