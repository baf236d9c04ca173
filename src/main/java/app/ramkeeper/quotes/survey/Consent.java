package app.ramkeeper.quotes.survey;

/** How a right stands that the works need. */
enum Consent {
    /** Nobody has looked into it yet. */
    UNKNOWN,
    /** Looked into: none is needed. */
    NOT_NEEDED,
    /** Asked for, no answer yet. */
    APPLIED,
    /** Held. */
    HELD
}
