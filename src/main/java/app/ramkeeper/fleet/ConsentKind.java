package app.ramkeeper.fleet;

/** What a consent allows. */
public enum ConsentKind {
    TAKE,
    EASEMENT,
    DISCHARGE,
    OTHER
}
