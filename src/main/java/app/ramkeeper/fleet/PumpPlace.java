package app.ramkeeper.fleet;

/** Where a pump is: at work in an install, lent to one, or away from all. */
public enum PumpPlace {
    INSTALL,
    LOAN,
    WORKSHOP,
    STORE,
    RETIRED
}
