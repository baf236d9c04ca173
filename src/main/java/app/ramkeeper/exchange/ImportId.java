package app.ramkeeper.exchange;

import app.ramkeeper.shared.Uuids;
import java.util.UUID;

/** Identifies an import. */
public record ImportId(UUID value) {

    public static ImportId next() {
        return new ImportId(Uuids.next());
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
