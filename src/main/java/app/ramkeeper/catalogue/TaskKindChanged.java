package app.ramkeeper.catalogue;

/**
 * The terms of a kind of task have changed; told in the same transaction.
 *
 * @param tasks which installs have such a task may have changed too: a new kind, or one for drinking water only
 * @param history what counts as its being done may have changed too: included kinds, or parts that reset it
 */
public record TaskKindChanged(TaskKindId kind, boolean tasks, boolean history) {}
