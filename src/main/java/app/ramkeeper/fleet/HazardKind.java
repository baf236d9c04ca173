package app.ramkeeper.fleet;

/** What can hurt someone at a site. */
public enum HazardKind {
    DOG,
    BULL,
    STEEP,
    CONFINED_SPACE,
    HEAVY_LIFT,
    DEEP_WATER,
    FORD,
    ELECTRIC_FENCE,
    SPRAYING,
    NO_SIGNAL,
    OTHER;

    /** True where nobody may be sent alone. */
    public boolean needsTwo() {
        return this == CONFINED_SPACE || this == HEAVY_LIFT;
    }
}
