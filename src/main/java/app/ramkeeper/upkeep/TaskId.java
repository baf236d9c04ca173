package app.ramkeeper.upkeep;

import app.ramkeeper.shared.Uuids;
import java.util.UUID;

/** Identifies a service task. */
public record TaskId(UUID value) {

    public static TaskId next() {
        return new TaskId(Uuids.next());
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
