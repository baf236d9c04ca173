package app.ramkeeper.exchange;

/** Where an import stands. A job works on it in the three states that end in -ing. */
public enum ImportState {
    STAGED,
    CHECKING,
    CHECKED,
    APPLYING,
    APPLIED,
    UNDOING,
    UNDONE;

    /** True while a job works on it. */
    public boolean isWorking() {
        return this == CHECKING || this == APPLYING || this == UNDOING;
    }
}
