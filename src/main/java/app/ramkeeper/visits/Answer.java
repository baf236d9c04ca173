package app.ramkeeper.visits;

/** What the customer said to a planned visit. */
public enum Answer {
    NONE,
    TOLD,
    CONFIRMED,
    ASKED_TO_MOVE,
    NO_ANSWER
}
