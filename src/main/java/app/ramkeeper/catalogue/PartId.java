package app.ramkeeper.catalogue;

import app.ramkeeper.shared.Uuids;
import java.util.UUID;

/** Identifies a part. */
public record PartId(UUID value) {

    public static PartId next() {
        return new PartId(Uuids.next());
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
