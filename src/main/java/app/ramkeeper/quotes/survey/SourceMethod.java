package app.ramkeeper.quotes.survey;

/** How the source was measured. */
enum SourceMethod {
    /** A bucket filled by the clock, several times. */
    BUCKET,
    /** Head over a V-notch. */
    NOTCH,
    /** Floats timed along a reach of a sounded section. */
    FLOAT,
    /** A figure that somebody gives. */
    GIVEN
}
