package app.ramkeeper.identity.signin;

import jakarta.servlet.http.HttpServletRequest;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.event.EventListener;
import org.springframework.security.authentication.event.AbstractAuthenticationFailureEvent;
import org.springframework.security.authentication.event.AuthenticationSuccessEvent;
import org.springframework.security.authentication.event.LogoutSuccessEvent;
import org.springframework.security.authorization.AuthorizationEventPublisher;
import org.springframework.security.authorization.SpringAuthorizationEventPublisher;
import org.springframework.security.authorization.event.AuthorizationDeniedEvent;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.authentication.WebAuthenticationDetails;
import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.context.request.ServletRequestAttributes;

/** Listens to what the framework decides and writes it into the security log. */
@Configuration
class SecurityEvents {

    private final SecurityLog log;

    SecurityEvents(SecurityLog log) {
        this.log = log;
    }

    @Bean
    static AuthorizationEventPublisher authorizationEvents(ApplicationEventPublisher events) {
        return new SpringAuthorizationEventPublisher(events);
    }

    @EventListener
    void signedIn(AuthenticationSuccessEvent event) {
        log.event(
                "sign-in", "passed", event.getAuthentication().getName(), from(event.getAuthentication()), "password");
    }

    @EventListener
    void refused(AbstractAuthenticationFailureEvent event) {
        log.event(
                "sign-in",
                "failed",
                event.getAuthentication().getName(),
                from(event.getAuthentication()),
                event.getException().getClass().getSimpleName());
    }

    @EventListener
    void signedOut(LogoutSuccessEvent event) {
        log.event("sign-out", "passed", event.getAuthentication().getName(), from(event.getAuthentication()), "");
    }

    @EventListener
    void denied(AuthorizationDeniedEvent<?> event) {
        Authentication who = event.getAuthentication().get();
        HttpServletRequest request = event.getObject() instanceof HttpServletRequest asked ? asked : current();
        log.event(
                "access",
                "denied",
                who == null ? "-" : who.getName(),
                request == null ? null : request.getRemoteAddr(),
                request == null ? "" : request.getMethod() + " " + Wants.path(request));
    }

    private static @Nullable HttpServletRequest current() {
        return RequestContextHolder.getRequestAttributes() instanceof ServletRequestAttributes attributes
                ? attributes.getRequest()
                : null;
    }

    private static @Nullable String from(Authentication authentication) {
        return authentication.getDetails() instanceof WebAuthenticationDetails details
                ? details.getRemoteAddress()
                : null;
    }
}
