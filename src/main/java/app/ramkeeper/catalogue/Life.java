package app.ramkeeper.catalogue;

/** Which days an interval counts. */
public enum Life {
    CALENDAR,
    /** Only days on which the ram beats: wear, not age. */
    RUNNING
}
