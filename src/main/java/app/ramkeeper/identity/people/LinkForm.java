package app.ramkeeper.identity.people;

import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/** What the page behind a one-time link posts, besides the password, which is taken exactly as typed. */
record LinkForm(
        @Nullable @Size(max = 120, message = "{text.tooLong}")
        String name,

        @Nullable @Size(max = 100, message = "{text.tooLong}")
        String login) {}
