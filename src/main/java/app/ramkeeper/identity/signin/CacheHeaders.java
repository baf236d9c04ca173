package app.ramkeeper.identity.signin;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.regex.Pattern;
import org.springframework.http.HttpHeaders;
import org.springframework.security.web.header.HeaderWriter;

/** Pages are never kept by a browser or proxy; files whose name holds their hash or version may be kept for ever. */
class CacheHeaders implements HeaderWriter {

    private static final Pattern NAMED_BY_CONTENT = Pattern.compile(
            "/(css|js|fonts|icons)/.+-[0-9a-f]{32}\\.[a-z0-9]+|/webjars/[^/]+/[0-9][^/]*/.+|/field/app/[0-9a-f]{32}/.+");
    private static final Pattern FILE =
            Pattern.compile("/(css|js|fonts|icons|webjars)/.+|/field|/sw\\.js|/manifest\\.webmanifest");

    @Override
    public void writeHeaders(HttpServletRequest request, HttpServletResponse response) {
        String path = Wants.path(request);
        boolean found = response.getStatus() == 200 || response.getStatus() == 304;
        if (found && NAMED_BY_CONTENT.matcher(path).matches()) {
            response.setHeader(HttpHeaders.CACHE_CONTROL, "public, max-age=31536000, immutable");
        } else if (found && FILE.matcher(path).matches()) {
            response.setHeader(HttpHeaders.CACHE_CONTROL, "no-cache");
        } else {
            response.setHeader(HttpHeaders.CACHE_CONTROL, "no-store");
        }
    }
}
