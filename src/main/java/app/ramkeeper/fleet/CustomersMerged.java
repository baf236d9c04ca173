package app.ramkeeper.fleet;

/** A duplicate customer became a signpost; what refers to it should refer to the kept one. */
public record CustomersMerged(CustomerId duplicate, CustomerId kept) {}
