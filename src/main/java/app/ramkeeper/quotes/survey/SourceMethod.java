package app.ramkeeper.quotes.survey;

/** How the source was measured. */
enum SourceMethod {
    /** A bucket filled by the clock, several times. */
    BUCKET,
    /** Head over a V-notch. */
    NOTCH,
    /** A figure that somebody gives. */
    GIVEN
}
