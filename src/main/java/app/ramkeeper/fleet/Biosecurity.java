package app.ramkeeper.fleet;

/** What must not be carried out of a catchment. */
public enum Biosecurity {
    CLEAN,
    WEED,
    DISEASE
}
