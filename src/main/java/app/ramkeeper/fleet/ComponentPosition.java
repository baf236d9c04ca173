package app.ramkeeper.fleet;

/** Where in an install a component sits. */
public enum ComponentPosition {
    INTAKE,
    STRAINER,
    DRIVE_PIPE,
    WASTE_VALVE,
    DELIVERY_VALVE,
    SEAL,
    SNIFTER,
    VESSEL,
    GAUGE,
    DELIVERY_PIPE,
    OTHER
}
