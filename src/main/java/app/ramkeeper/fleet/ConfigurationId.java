package app.ramkeeper.fleet;

import app.ramkeeper.shared.Uuids;
import java.util.UUID;

/** Identifies a configuration. */
public record ConfigurationId(UUID value) {

    public static ConfigurationId next() {
        return new ConfigurationId(Uuids.next());
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
