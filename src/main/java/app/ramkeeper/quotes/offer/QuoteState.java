package app.ramkeeper.quotes.offer;

/** What has become of a revision. */
public enum QuoteState {
    DRAFT,
    SENT,
    ACCEPTED,
    DECLINED,
    LAPSED,
    REPLACED
}
