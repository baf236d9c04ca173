package app.ramkeeper.quotes.offer;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/** What a customer's answer posts. */
public record CustomerForm(
        @NotBlank @Size(max = 160) @Nullable String name,
        @Size(max = 900) @Nullable String reason,
        @Nullable Boolean agreed) {}
