package app.ramkeeper.identity.signin;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.stereotype.Component;
import org.springframework.web.util.UriComponentsBuilder;

/** Sends a person to the sign-in page, and back to where they were going; a script gets 401, never a redirect. */
@Component
class NotSignedIn implements AuthenticationEntryPoint {

    private final Problems problems;

    NotSignedIn(Problems problems) {
        this.problems = problems;
    }

    @Override
    public void commence(HttpServletRequest request, HttpServletResponse response, AuthenticationException reason)
            throws IOException {
        if (Wants.noPage(request)) {
            problems.answer(response, HttpStatus.UNAUTHORIZED, "Please sign in and try again.");
            return;
        }
        UriComponentsBuilder page = UriComponentsBuilder.fromPath("/sign-in");
        if (request.getMethod().equals("GET") && !request.getRequestURI().equals("/")) {
            String query = request.getQueryString();
            page.queryParam("next", "{next}");
            response.sendRedirect(page.encode()
                    .buildAndExpand(request.getRequestURI() + (query == null ? "" : "?" + query))
                    .toUriString());
        } else {
            response.sendRedirect(page.toUriString());
        }
    }
}
