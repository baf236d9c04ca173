package app.ramkeeper.identity;

import app.ramkeeper.shared.Uuids;
import java.util.UUID;

/** Identifies a account. */
public record AccountId(UUID value) {

    public static AccountId next() {
        return new AccountId(Uuids.next());
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
