package app.ramkeeper.identity.signin;

import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.authentication.dao.DaoAuthenticationProvider;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Component;

/** Checks a password. An unknown name costs the same time as a known one: a dummy password is hashed. */
@Component
class PasswordSignIn extends DaoAuthenticationProvider {

    PasswordSignIn(AccountUsers accounts, PasswordEncoder encoder) {
        super(accounts);
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

    @Override
    protected Authentication createSuccessAuthentication(
            Object principal, Authentication authentication, UserDetails user) {
        Authentication checked = super.createSuccessAuthentication(principal, authentication, user);
        return new UsernamePasswordAuthenticationToken(((SigningIn) user).user(), null, checked.getAuthorities());
    }
}
