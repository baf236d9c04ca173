package app.ramkeeper.visits;

/** Who did the work. */
public enum DoneBy {
    US,
    OWNER
}
