package app.ramkeeper.identity.people;

import app.ramkeeper.identity.Role;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.util.EnumSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** A sign-in name and what it may do. */
record AccountForm(
        @NotNull @Size(max = 100) @Pattern(regexp = "[\\p{L}\\p{N}._@+-]*", message = "{identity.account.login.wrong}")
        String login,

        @NotEmpty Set<Role> roles,
        @Nullable Integer version) {

    AccountForm {
        roles = roles == null || roles.isEmpty() ? EnumSet.noneOf(Role.class) : EnumSet.copyOf(roles);
    }
}
