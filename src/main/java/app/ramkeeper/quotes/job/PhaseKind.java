package app.ramkeeper.quotes.job;

/** What is done in a phase of a job. */
public enum PhaseKind {
    DIG,
    LAY,
    PLINTH,
    CURE,
    FIT,
    COMMISSION,
    OTHER
}
