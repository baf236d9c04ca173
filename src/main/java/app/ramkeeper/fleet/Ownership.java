package app.ramkeeper.fleet;

/** Whose a pump is. */
public enum Ownership {
    CUSTOMER,
    COMPANY
}
