package app.ramkeeper.fleet;

/** What stands in the system round the pump. */
public enum ElementKind {
    SPRING_BOX,
    FEED_PIPE,
    DRIVE_TANK,
    CHAMBER,
    DELIVERY_LINE,
    TANK,
    OVERFLOW,
    FLOAT,
    TROUGH,
    TREATMENT
}
