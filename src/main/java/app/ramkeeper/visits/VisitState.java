package app.ramkeeper.visits;

/** Where a planned visit stands. */
public enum VisitState {
    PLANNED,
    DONE,
    COULD_NOT,
    CANCELLED
}
