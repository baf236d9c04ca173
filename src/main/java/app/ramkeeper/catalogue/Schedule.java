package app.ramkeeper.catalogue;

/** What sets a task's date. */
public enum Schedule {
    /** So long after it was last done. */
    INTERVAL,
    /** A fixed day of the year: before leaf fall, before frost. */
    SEASON,
    /** Something that happened, such as a flood. */
    EVENT
}
