package app.ramkeeper.catalogue;

/** What a task is about: the whole install, or each pump of a battery by itself. */
public enum Scope {
    INSTALL,
    PUMP
}
