package app.ramkeeper.fleet;

import org.jspecify.annotations.Nullable;

/** What can hurt someone at a site, in a word and in words. */
public record Hazard(HazardKind kind, @Nullable String text) {}
