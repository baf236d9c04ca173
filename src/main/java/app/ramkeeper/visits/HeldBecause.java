package app.ramkeeper.visits;

/** Why a report waits on the office's list instead of being applied. */
public enum HeldBecause {
    SECOND_REPORT,
    VISIT_CANCELLED,
    VISIT_UNKNOWN,
    SUPERSEDED_ALREADY,
    REGISTER_CHANGED,
    WRITER_LOCKED,
    SIGNATURE_WRONG
}
