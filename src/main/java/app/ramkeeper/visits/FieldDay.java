package app.ramkeeper.visits;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** When somebody left, when they are due back, and when they said they are. */
public record FieldDay(
        Instant leftAt, Instant dueBackAt, @Nullable Instant backAt, boolean late) {

    public boolean isOut() {
        return backAt == null;
    }
}
