package app.ramkeeper.fleet;

import org.jspecify.annotations.Nullable;

/** A point of a line as it was laid: how far along, how high, and what lies there. */
public record AsBuiltPoint(
        PointKind kind,
        @Nullable Double chainageM,
        @Nullable Double levelM,
        @Nullable Position position,
        @Nullable String note) {}
