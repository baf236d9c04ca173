package app.ramkeeper.quotes.offer;

/** A customer has accepted a revision; the hand-over belongs to the same transaction. */
public record QuoteAccepted(QuoteId quote, int revision) {}
