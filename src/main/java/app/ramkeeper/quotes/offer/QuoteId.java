package app.ramkeeper.quotes.offer;

import app.ramkeeper.shared.Uuids;
import java.util.UUID;

/** Identifies a quote with all its revisions. */
public record QuoteId(UUID value) {

    public static QuoteId next() {
        return new QuoteId(Uuids.next());
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
