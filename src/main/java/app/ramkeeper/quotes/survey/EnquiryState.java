package app.ramkeeper.quotes.survey;

/** How an enquiry stands. */
public enum EnquiryState {
    /** Being looked at. */
    OPEN,
    /** A quote was sent. */
    QUOTED,
    /** A quote was accepted. */
    WON,
    /** The customer went another way. */
    LOST,
    /** Nothing comes of it: no water, no answer. */
    CLOSED
}
