package app.ramkeeper.identity.signin;

import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.security.authentication.AuthenticationServiceException;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.authentication.AuthenticationFailureHandler;
import org.springframework.security.web.authentication.AuthenticationSuccessHandler;
import org.springframework.stereotype.Component;
import org.springframework.web.util.UriComponentsBuilder;

/** Where a sign-in by password leads. */
@Component
class SignInOutcome implements AuthenticationSuccessHandler, AuthenticationFailureHandler {

    private final OwnSessions sessions;

    SignInOutcome(OwnSessions sessions) {
        this.sessions = sessions;
    }

    @Override
    public void onAuthenticationSuccess(
            HttpServletRequest request, HttpServletResponse response, Authentication authentication)
            throws IOException {
        String next = OnSite.target(request.getParameter("next"));
        boolean complete = SignedIn.isComplete(authentication);
        sessions.begun(request, authentication);
        response.sendRedirect(
                complete
                        ? next
                        : UriComponentsBuilder.fromPath("/sign-in/code")
                                .queryParam("next", "{next}")
                                .encode()
                                .buildAndExpand(next)
                                .toUriString());
    }

    /** The same page again with what was typed; the password field is empty, as browsers expect. */
    @Override
    public void onAuthenticationFailure(
            HttpServletRequest request, HttpServletResponse response, AuthenticationException reason)
            throws IOException, ServletException {
        if (reason instanceof AuthenticationServiceException) {
            response.sendError(HttpStatus.SERVICE_UNAVAILABLE.value());
            return;
        }
        if (reason instanceof TooManyAttempts often) {
            response.setHeader(
                    HttpHeaders.RETRY_AFTER, Long.toString(often.pause().toSeconds()));
            response.setStatus(HttpStatus.TOO_MANY_REQUESTS.value());
            request.setAttribute("pause", often.pause().toSeconds());
        } else {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        }
        request.getRequestDispatcher("/sign-in/refused").forward(request, response);
    }
}
