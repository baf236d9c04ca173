package app.ramkeeper.visits.calls;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/** How the call ended. */
public record CallCloseForm(
        @NotBlank @Size(max = 2000) @Nullable String closedNote) {}
