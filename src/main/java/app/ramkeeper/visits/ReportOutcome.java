package app.ramkeeper.visits;

/** How a visit went. A withdrawn report only takes an earlier one out of force. */
public enum ReportOutcome {
    DONE,
    PARTLY,
    COULD_NOT,
    WITHDRAWN
}
