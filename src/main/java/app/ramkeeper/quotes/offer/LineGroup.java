package app.ramkeeper.quotes.offer;

/** Under which heading a line stands on the quote; in the order of the paper. */
public enum LineGroup {
    PUMPS,
    DRIVE_PIPE,
    DELIVERY_PIPE,
    VESSEL,
    VALVES,
    TANK,
    LABOUR,
    TRAVEL,
    OTHER
}
