package app.ramkeeper.visits;

import app.ramkeeper.shared.Uuids;
import java.util.UUID;

/** Identifies a planned visit. */
public record VisitId(UUID value) {

    public static VisitId next() {
        return new VisitId(Uuids.next());
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
