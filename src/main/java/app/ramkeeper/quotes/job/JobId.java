package app.ramkeeper.quotes.job;

import app.ramkeeper.quotes.offer.QuoteId;
import java.util.UUID;

/** Identifies a job; the same as its quote's. */
public record JobId(UUID value) {

    public QuoteId quote() {
        return new QuoteId(value);
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
