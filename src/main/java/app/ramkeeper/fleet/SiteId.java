package app.ramkeeper.fleet;

import app.ramkeeper.shared.Uuids;
import java.util.UUID;

/** Identifies a site. */
public record SiteId(UUID value) {

    public static SiteId next() {
        return new SiteId(Uuids.next());
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
