package app.ramkeeper.fleet;

import app.ramkeeper.shared.Uuids;
import java.util.UUID;

/** Identifies a customer. */
public record CustomerId(UUID value) {

    public static CustomerId next() {
        return new CustomerId(Uuids.next());
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
