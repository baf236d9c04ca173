package app.ramkeeper.identity.signin;

import jakarta.servlet.http.HttpServletRequest;
import org.springframework.http.HttpHeaders;

/** What kind of answer a request can use. */
final class Wants {

    private Wants() {}

    /** Whether a script asks (a fragment or JSON), which cannot use a redirect to a page. */
    static boolean noPage(HttpServletRequest request) {
        String accept = request.getHeader(HttpHeaders.ACCEPT);
        return request.getHeader("HX-Request") != null
                || (accept != null && accept.contains("json") && !accept.contains("text/html"));
    }
}
