package app.ramkeeper.upkeep.rules;

/** Who does a task at an install. */
public enum DoneBy {
    US,
    OWNER,
    /** Offered, and the customer does not want it. */
    DECLINED
}
