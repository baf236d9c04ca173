package app.ramkeeper.catalogue;

/** What sort of part it is. */
public enum PartKind {
    VALVE_RUBBER,
    SEAL,
    STRAINER,
    FILTER,
    VESSEL,
    VALVE,
    FITTING,
    PIPE,
    OTHER
}
