package app.ramkeeper.fleet;

/**
 * Something as it is in the register, with the version that an edit of it must name.
 *
 * @param details what the edit form shows
 */
public record Versioned<T>(int version, T details) {}
