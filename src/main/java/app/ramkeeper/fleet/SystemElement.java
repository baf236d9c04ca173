package app.ramkeeper.fleet;

import org.jspecify.annotations.Nullable;

/** Something of the system round the pump, from spring box to trough. */
public record SystemElement(
        ElementKind kind,
        String name,
        @Nullable Position position,
        @Nullable String note) {}
