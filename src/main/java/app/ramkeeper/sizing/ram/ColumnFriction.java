package app.ramkeeper.sizing.ram;

/** How the drive pipe's wall takes head from the moving column. */
public enum ColumnFriction {
    /** As in steady flow at the velocity of the moment (quasi-steady; real pulsing flow loses somewhat more). */
    COLEBROOK_WHITE,
    /** Not at all: fittings only, as in textbook closed forms. */
    NONE
}
