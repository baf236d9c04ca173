package app.ramkeeper.web;

import jakarta.servlet.http.HttpServletRequest;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;

/** The page of this application from which a request came. */
final class CameFrom {

    /** One slash, then no slash or backslash, and no control character; sign-in and one-time links lead nowhere twice. */
    private static final Pattern PATH = Pattern.compile("/(?!sign-|link/)(?![/\\\\])[^\\\\\\p{Cntrl}]{0,1500}");

    private CameFrom() {}

    /** Its path with the query; null if the browser does not say, or it is no other page of this host. */
    static @Nullable String page(HttpServletRequest request) {
        String said = request.getHeader(HttpHeaders.REFERER);
        if (said == null || said.length() > 2000) {
            return null;
        }
        try {
            URI from = new URI(said);
            String path = from.getRawPath() + (from.getRawQuery() == null ? "" : "?" + from.getRawQuery());
            boolean here = request.getServerName().equalsIgnoreCase(from.getHost());
            return here && !isTheSame(request, from) && PATH.matcher(path).matches() ? path : null;
        } catch (URISyntaxException unreadable) {
            return null;
        }
    }

    private static boolean isTheSame(HttpServletRequest request, URI from) {
        return request.getMethod().equals("GET") && request.getRequestURI().equals(from.getRawPath());
    }
}
