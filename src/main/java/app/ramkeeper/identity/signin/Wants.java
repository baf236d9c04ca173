package app.ramkeeper.identity.signin;

import jakarta.servlet.http.HttpServletRequest;
import org.springframework.http.HttpHeaders;

/** What a request asks for, and what kind of answer it can use. */
final class Wants {

    private Wants() {}

    /** Whether a script asks (a fragment or JSON), which cannot use a redirect to a page. */
    static boolean noPage(HttpServletRequest request) {
        String accept = request.getHeader(HttpHeaders.ACCEPT);
        return request.getHeader("HX-Request") != null
                || path(request).startsWith("/field/")
                || (accept != null && accept.contains("json") && !accept.contains("text/html"));
    }

    /** The path that is asked for, however the servlet is mapped. */
    static String path(HttpServletRequest request) {
        String rest = request.getPathInfo();
        return rest == null ? request.getServletPath() : request.getServletPath() + rest;
    }
}
