package app.ramkeeper.fleet;

import jakarta.persistence.Embeddable;
import org.jspecify.annotations.Nullable;

/** What the register knows about a person outside the company. */
@Embeddable
public record ContactDetails(
        String name,
        @Nullable String phone,
        @Nullable String email,
        @Nullable String notes) {}
