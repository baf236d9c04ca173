package app.ramkeeper.identity;

import java.io.Serializable;
import java.util.Collection;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.core.authority.AuthorityUtils;
import org.springframework.security.core.userdetails.UserDetails;

/**
 * The signed-in person as controllers receive them with {@code @AuthenticationPrincipal}.
 *
 * @param account the account's id
 * @param person the person's id; every account belongs to a person
 * @param login the sign-in name
 * @param name how pages address the person
 * @param roles what they may do
 * @param depot the person's depot, if they belong to one
 */
public record CurrentUser(
        UUID account,
        UUID person,
        String login,
        String name,
        Set<Role> roles,
        @Nullable UUID depot) implements UserDetails, Serializable {

    public boolean is(Role role) {
        return roles.contains(role);
    }

    @Override
    public Collection<? extends GrantedAuthority> getAuthorities() {
        return AuthorityUtils.createAuthorityList(
                roles.stream().map(Role::authority).toArray(String[]::new));
    }

    @Override
    public @Nullable String getPassword() {
        return null;
    }

    @Override
    public String getUsername() {
        return login;
    }
}
