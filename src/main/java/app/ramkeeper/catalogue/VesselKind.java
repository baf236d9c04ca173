package app.ramkeeper.catalogue;

/** How the pressure vessel keeps its air: only a bladder has a pre-charge. */
public enum VesselKind {
    BLADDER,
    AIR_CHAMBER,
    NONE
}
