package app.ramkeeper.identity;

import app.ramkeeper.shared.Uuids;
import java.util.UUID;

/** Identifies a depot. */
public record DepotId(UUID value) {

    public static DepotId next() {
        return new DepotId(Uuids.next());
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
