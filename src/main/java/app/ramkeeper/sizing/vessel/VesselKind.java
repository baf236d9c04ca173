package app.ramkeeper.sizing.vessel;

/** Kinds of pressure vessel. */
public enum VesselKind {
    /** Gas behind a bladder or diaphragm, charged before it is fitted. */
    BLADDER,
    /** Plain air chamber, kept full of air by a snifter valve; it has no pre-charge. */
    PLAIN_CHAMBER
}
