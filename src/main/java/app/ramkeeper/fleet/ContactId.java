package app.ramkeeper.fleet;

import app.ramkeeper.shared.Uuids;
import java.util.UUID;

/** Identifies a person outside the company. */
public record ContactId(UUID value) {

    public static ContactId next() {
        return new ContactId(Uuids.next());
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
