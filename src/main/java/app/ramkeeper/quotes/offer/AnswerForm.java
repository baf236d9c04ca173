package app.ramkeeper.quotes.offer;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/** An answer that the office was given by phone, text or signed paper. */
public record AnswerForm(
        @NotNull @Nullable Integer revision,

        @NotNull(message = "{quotes.answer.missing}") @Nullable
        Boolean accepted,

        @NotBlank @Size(max = 160) @Nullable String name,
        @NotNull @Nullable Answered how,
        @Size(max = 900) @Nullable String note) {}
