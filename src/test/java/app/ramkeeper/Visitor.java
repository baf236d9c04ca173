package app.ramkeeper;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.CookieManager;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Somebody with a browser's cookies, for tests of the packaged application. */
public final class Visitor {

    private static final Pattern TOKEN = Pattern.compile("name=\"_csrf\"[^>]*value=\"([^\"]+)\"");

    private final HttpClient client = HttpClient.newBuilder()
            .cookieHandler(new CookieManager())
            .connectTimeout(Duration.ofSeconds(10))
            .build();
    private final PackagedApp app;

    public Visitor(PackagedApp app) {
        this.app = app;
    }

    /** Signs in through the page, as people do, and returns the answer to it. */
    public HttpResponse<String> signIn(String login, String password) {
        Matcher token = TOKEN.matcher(get("/sign-in").body());
        if (!token.find()) {
            throw new IllegalStateException("The sign-in page has no token");
        }
        return post("/sign-in", Map.of("login", login, "password", password, "_csrf", token.group(1)));
    }

    public HttpResponse<String> get(String path) {
        return send(HttpRequest.newBuilder(app.uri(path)).GET());
    }

    public HttpResponse<String> post(String path, Map<String, String> fields) {
        String form = fields.entrySet().stream()
                .map(field -> field.getKey() + "=" + URLEncoder.encode(field.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        return send(HttpRequest.newBuilder(app.uri(path))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(HttpRequest.BodyPublishers.ofString(form)));
    }

    private HttpResponse<String> send(HttpRequest.Builder request) {
        try {
            return client.send(request.timeout(Duration.ofSeconds(60)).build(), HttpResponse.BodyHandlers.ofString());
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(interrupted);
        }
    }
}
