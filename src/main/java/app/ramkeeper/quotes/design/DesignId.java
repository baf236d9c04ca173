package app.ramkeeper.quotes.design;

import app.ramkeeper.shared.Uuids;
import java.util.UUID;

/** Identifies a chosen design. */
public record DesignId(UUID value) {

    public static DesignId next() {
        return new DesignId(Uuids.next());
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
