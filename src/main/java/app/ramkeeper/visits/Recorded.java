package app.ramkeeper.visits;

/** What became of a report that was sent in. */
public sealed interface Recorded {

    ReportId report();

    /** It is in the history; {@code repeated} if it already was. */
    record Applied(ReportId report, boolean repeated) implements Recorded {}

    /** It is kept word for word on the office's list, to be settled by a person; {@code repeated} if it already was. */
    record Held(ReportId report, HeldBecause because, boolean repeated) implements Recorded {}
}
