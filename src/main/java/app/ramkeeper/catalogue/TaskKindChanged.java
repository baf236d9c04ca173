package app.ramkeeper.catalogue;

/** The terms of a kind of task, or what it includes, have changed; told in the same transaction. */
public record TaskKindChanged(TaskKindId kind) {}
