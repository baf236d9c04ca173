package app.ramkeeper.visits.stock;

/** Why a count changed. UNCOUNTED is what a used part shows to have been there beyond the count. */
public enum MovementReason {
    RECEIVED,
    MOVED,
    COUNTED,
    USED,
    UNCOUNTED,
    CORRECTED,
    SCRAPPED
}
