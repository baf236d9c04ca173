package app.ramkeeper.upkeep.rules;

/** Whose it is that a task is not done yet. */
public enum Waiting {
    OURS,
    CANNOT_REACH,
    REFUSED,
    PARTS
}
