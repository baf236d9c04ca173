package app.ramkeeper.identity.signin;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
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

    @Override
    public void onAuthenticationSuccess(
            HttpServletRequest request, HttpServletResponse response, Authentication authentication)
            throws IOException {
        response.sendRedirect(OnSite.target(request.getParameter("next")));
    }

    @Override
    public void onAuthenticationFailure(
            HttpServletRequest request, HttpServletResponse response, AuthenticationException reason)
            throws IOException {
        if (reason instanceof AuthenticationServiceException) {
            response.sendError(HttpServletResponse.SC_SERVICE_UNAVAILABLE);
            return;
        }
        response.sendRedirect(UriComponentsBuilder.fromPath("/sign-in")
                .queryParam("failed")
                .queryParam("next", "{next}")
                .encode()
                .buildAndExpand(OnSite.target(request.getParameter("next")))
                .toUriString());
    }
}
