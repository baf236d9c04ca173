package app.ramkeeper.quotes.offer;

import app.ramkeeper.audit.Actor;
import java.util.function.Supplier;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.authority.AuthorityUtils;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.core.context.SecurityContextImpl;

/** Work that a customer's answer or a job sets off, with the office's rights for just that work; the trail names its source. */
final class AsOffice {

    private AsOffice() {}

    static <T> T run(Actor actor, Supplier<T> work) {
        SecurityContext before = SecurityContextHolder.getContext();
        SecurityContextHolder.setContext(new SecurityContextImpl(UsernamePasswordAuthenticationToken.authenticated(
                actor.name(), null, AuthorityUtils.createAuthorityList("ROLE_OFFICE"))));
        try {
            return Actor.as(actor, work);
        } finally {
            SecurityContextHolder.setContext(before);
        }
    }
}
