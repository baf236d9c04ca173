package app.ramkeeper.visits;

/** A planned visit is to answer other tasks than before, in the same transaction. */
public record VisitRetasked(VisitId visit) {}
