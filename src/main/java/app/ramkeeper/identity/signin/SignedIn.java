package app.ramkeeper.identity.signin;

import app.ramkeeper.identity.CurrentUser;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.core.authority.FactorGrantedAuthority;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.context.HttpSessionSecurityContextRepository;
import org.springframework.security.web.csrf.HttpSessionCsrfTokenRepository;
import org.springframework.stereotype.Component;

/** Adds a factor to a sign-in, by code or passkey, under a new session id. */
@Component
public class SignedIn {

    /** A code of the person's device or a recovery code was right. */
    public static final String BY_CODE = "FACTOR_CODE";

    private static final Duration FRESH = Duration.ofMinutes(10);

    private final HttpSessionSecurityContextRepository contexts = new HttpSessionSecurityContextRepository();
    private final HttpSessionCsrfTokenRepository tokens = new HttpSessionCsrfTokenRepository();
    private final OwnSessions sessions;
    private final Clock clock;

    SignedIn(OwnSessions sessions, Clock clock) {
        this.sessions = sessions;
        this.clock = clock;
    }

    /** Whether all factors that are asked for were given: roles come with the last. */
    public static boolean isComplete(Authentication authentication) {
        return authentication.getAuthorities().stream()
                .anyMatch(authority -> String.valueOf(authority.getAuthority()).startsWith("ROLE_"));
    }

    /** Whether some factor was proved within the last minutes, as changes to ways in ask for. */
    public boolean isFresh(Authentication authentication) {
        return authentication.getAuthorities().stream()
                .anyMatch(authority -> authority instanceof FactorGrantedAuthority factor
                        && factor.getIssuedAt().isAfter(clock.instant().minus(FRESH)));
    }

    /** Notes that a factor was proved again, for changes that ask for a fresh sign-in. */
    public void refresh(String factor, HttpServletRequest request, HttpServletResponse response) {
        Authentication before = SecurityContextHolder.getContext().getAuthentication();
        if (before != null && isComplete(before) && before.getPrincipal() instanceof CurrentUser user) {
            complete(user, factor, request, response);
        }
    }

    /** Signs the person in with all their roles. */
    public void complete(CurrentUser user, String factor, HttpServletRequest request, HttpServletResponse response) {
        Map<String, GrantedAuthority> authorities = new LinkedHashMap<>();
        Authentication before = SecurityContextHolder.getContext().getAuthentication();
        if (before != null
                && before.getPrincipal() instanceof CurrentUser same
                && same.account().equals(user.account())) {
            before.getAuthorities().forEach(held -> authorities.put(String.valueOf(held.getAuthority()), held));
        }
        user.getAuthorities().forEach(role -> authorities.put(String.valueOf(role.getAuthority()), role));
        authorities.put(
                factor,
                FactorGrantedAuthority.withAuthority(factor)
                        .issuedAt(clock.instant())
                        .build());
        store(user, new ArrayList<>(authorities.values()), request, response);
    }

    private void store(
            CurrentUser user,
            List<GrantedAuthority> authorities,
            HttpServletRequest request,
            HttpServletResponse response) {
        if (request.getSession(false) != null) {
            request.changeSessionId();
        }
        tokens.saveToken(null, request, response);
        SecurityContext context = SecurityContextHolder.createEmptyContext();
        Authentication signedIn = new UsernamePasswordAuthenticationToken(user, null, authorities);
        context.setAuthentication(signedIn);
        SecurityContextHolder.setContext(context);
        contexts.saveContext(context, request, response);
        sessions.begun(request, signedIn);
    }
}
