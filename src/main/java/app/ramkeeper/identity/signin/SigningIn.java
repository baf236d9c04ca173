package app.ramkeeper.identity.signin;

import app.ramkeeper.identity.CurrentUser;
import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.core.userdetails.UserDetails;

/** An account while its password is checked: carries the hash, which the signed-in {@link CurrentUser} never does. */
record SigningIn(CurrentUser user, @Nullable String hash, boolean disabled, boolean passwordIsEnough)
        implements UserDetails {

    /** Roles come with the last factor: until then no rule of the application lets this person through. */
    @Override
    public Collection<? extends GrantedAuthority> getAuthorities() {
        return passwordIsEnough ? user.getAuthorities() : List.of();
    }

    @Override
    public @Nullable String getPassword() {
        return hash;
    }

    @Override
    public String getUsername() {
        return user.login();
    }

    @Override
    public boolean isEnabled() {
        return !disabled;
    }

    @Override
    public String toString() {
        return "SigningIn[" + user.login() + "]";
    }
}
