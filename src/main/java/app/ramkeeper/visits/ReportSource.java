package app.ramkeeper.visits;

/** How a report came in. */
public enum ReportSource {
    FORM,
    PHONE,
    IMPORT,
    OWNER
}
