package app.ramkeeper.catalogue;

import app.ramkeeper.shared.Uuids;
import java.util.UUID;

/** Identifies a kind of service task. */
public record TaskKindId(UUID value) {

    public static TaskKindId next() {
        return new TaskKindId(Uuids.next());
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
