package app.ramkeeper.visits;

/** Where a reading was taken. */
public enum MeasuredAt {
    PUMP,
    TANK,
    SOURCE
}
