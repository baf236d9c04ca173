package app.ramkeeper.fleet;

/** Where the water comes from. */
public enum SourceKind {
    SPRING,
    STREAM,
    OTHER
}
