package app.ramkeeper.identity.signin;

import org.jspecify.annotations.Nullable;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.authentication.dao.DaoAuthenticationProvider;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.security.web.authentication.WebAuthenticationDetails;
import org.springframework.stereotype.Component;

/** Checks a password. An unknown name costs the same time as a known one: a dummy password is hashed. */
@Component
class PasswordSignIn extends DaoAuthenticationProvider {

    private static final String WHAT = "password";

    private final SignInLimits limits;

    PasswordSignIn(AccountUsers accounts, PasswordEncoder encoder, SignInLimits limits) {
        super(accounts);
        this.limits = limits;
        setPasswordEncoder(encoder);
        setUserDetailsPasswordService(accounts);
    }

    /** The status is asked after the password, so that a stranger cannot tell a disabled account from an unknown one. */
    @Override
    protected void doAfterPropertiesSet() {
        var statusCheck = getPreAuthenticationChecks();
        setPreAuthenticationChecks(account -> {});
        setPostAuthenticationChecks(statusCheck);
        super.doAfterPropertiesSet();
    }

    /** Takes a try before looking: parallel guesses cannot all be first. */
    @Override
    public Authentication authenticate(Authentication asked) {
        String address = address(asked);
        limits.take(WHAT, asked.getName(), address);
        Authentication passed = super.authenticate(asked);
        limits.forget(WHAT, asked.getName(), address);
        return passed;
    }

    @Override
    protected Authentication createSuccessAuthentication(
            Object principal, Authentication authentication, UserDetails user) {
        Authentication checked = super.createSuccessAuthentication(principal, authentication, user);
        var signedIn =
                new UsernamePasswordAuthenticationToken(((SigningIn) user).user(), null, checked.getAuthorities());
        signedIn.setDetails(authentication.getDetails());
        return signedIn;
    }

    private static @Nullable String address(Authentication asked) {
        return asked.getDetails() instanceof WebAuthenticationDetails details ? details.getRemoteAddress() : null;
    }
}
