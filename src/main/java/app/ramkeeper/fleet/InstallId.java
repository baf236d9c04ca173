package app.ramkeeper.fleet;

import app.ramkeeper.shared.Uuids;
import java.util.UUID;

/** Identifies an install. */
public record InstallId(UUID value) {

    public static InstallId next() {
        return new InstallId(Uuids.next());
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
