package app.ramkeeper.visits;

/** What became of one task at a visit. */
public enum WorkOutcome {
    DONE,
    INSPECTED_GOOD,
    COULD_NOT,
    NOT_NEEDED
}
