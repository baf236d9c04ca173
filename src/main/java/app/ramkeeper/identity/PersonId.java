package app.ramkeeper.identity;

import app.ramkeeper.shared.Uuids;
import java.util.UUID;

/** Identifies a person. */
public record PersonId(UUID value) {

    public static PersonId next() {
        return new PersonId(Uuids.next());
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
