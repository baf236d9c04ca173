package app.ramkeeper.identity.signin;

import app.ramkeeper.identity.IdentitySettings;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import org.springframework.web.filter.OncePerRequestFilter;

/** Ends a session at its absolute age, however busy it is. Idle sessions end by their own time-out. */
class SessionEnd extends OncePerRequestFilter {

    private final Duration lifetime;
    private final Clock clock;

    SessionEnd(IdentitySettings settings, Clock clock) {
        this.lifetime = settings.sessionLifetime();
        this.clock = clock;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        HttpSession session = request.getRequestedSessionId() == null ? null : request.getSession(false);
        if (session != null
                && session.getAttribute(OwnSessions.SIGNED_IN_AT) instanceof Long begun
                && clock.millis() - begun > lifetime.toMillis()) {
            session.invalidate();
        }
        chain.doFilter(request, response);
    }

    /** Files need no session, so none is looked up for them. */
    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        return Wants.path(request).matches("/(css|js|fonts|icons|webjars|field/app)/.*");
    }
}
