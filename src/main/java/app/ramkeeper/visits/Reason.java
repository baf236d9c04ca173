package app.ramkeeper.visits;

/** Why something could not be done. */
public enum Reason {
    LOCKED_GATE,
    NO_WATER,
    REFUSED,
    WEATHER,
    PARTS,
    OTHER
}
