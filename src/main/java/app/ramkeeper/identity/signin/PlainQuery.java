package app.ramkeeper.identity.signin;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Arrays;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Refuses an address whose query holds NUL, which Postgres cannot compare with anything. The library's firewall looks
 * at names of parameters only; posted forms are checked field by field, where the typed text can be kept.
 */
class PlainQuery extends OncePerRequestFilter {

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (request.getQueryString() != null && holdsNul(request)) {
            response.sendError(HttpServletResponse.SC_BAD_REQUEST);
            return;
        }
        chain.doFilter(request, response);
    }

    private static boolean holdsNul(HttpServletRequest request) {
        return request.getQueryString().contains("%00")
                || (request.getMethod().equals("GET")
                        && request.getParameterMap().values().stream()
                                .flatMap(Arrays::stream)
                                .anyMatch(value -> value.indexOf('\0') >= 0));
    }
}
