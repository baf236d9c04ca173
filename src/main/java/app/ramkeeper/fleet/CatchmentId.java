package app.ramkeeper.fleet;

import app.ramkeeper.shared.Uuids;
import java.util.UUID;

/** Identifies a catchment. */
public record CatchmentId(UUID value) {

    public static CatchmentId next() {
        return new CatchmentId(Uuids.next());
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
