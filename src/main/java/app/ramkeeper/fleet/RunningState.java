package app.ramkeeper.fleet;

/** What an install does from a day on. */
public enum RunningState {
    RUNNING,
    STOPPED,
    DORMANT,
    NO_WATER,
    RETIRED
}
