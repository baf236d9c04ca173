package app.ramkeeper.exchange;

/** What a file holds. */
public enum ImportKind {
    REGISTER,
    HISTORY
}
