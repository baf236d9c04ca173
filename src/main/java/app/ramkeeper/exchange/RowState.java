package app.ramkeeper.exchange;

/** What became of a row of a file. */
public enum RowState {
    NEW,
    READY,
    UNCHANGED,
    PROBLEM,
    APPLIED,
    UNDONE
}
