package app.ramkeeper.identity;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.CookieManager;
import java.net.HttpCookie;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A browser's cookies and forms against a running port, following no redirect, for tests of sign-in and sessions. */
public final class WebVisitor {

    private static final Pattern TOKEN = Pattern.compile("name=\"_csrf\"[^>]*value=\"([^\"]+)\"");

    private final CookieManager cookies = new CookieManager();
    private final HttpClient client =
            HttpClient.newBuilder().cookieHandler(cookies).build();
    private final int port;

    public WebVisitor(int port) {
        this.port = port;
    }

    public HttpResponse<String> get(String path, String... headers) {
        HttpRequest.Builder request = HttpRequest.newBuilder(uri(path)).GET();
        return send(headers.length == 0 ? request : request.headers(headers));
    }

    /** Posts fields (name, value, name, value, ...) with the token of the page that holds the form. */
    public HttpResponse<String> submit(String formPage, String path, String... fields) {
        Matcher token = TOKEN.matcher(get(formPage).body());
        StringBuilder body = new StringBuilder("_csrf=").append(token.find() ? encode(token.group(1)) : "");
        for (int i = 0; i < fields.length; i += 2) {
            body.append('&').append(fields[i]).append('=').append(encode(fields[i + 1]));
        }
        return send(HttpRequest.newBuilder(uri(path))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .header("User-Agent", "Mozilla/5.0 (X11; Linux x86_64) Firefox/140.0")
                .POST(HttpRequest.BodyPublishers.ofString(body.toString())));
    }

    public HttpResponse<String> signIn(String login, String password) {
        return submit("/sign-in", "/sign-in", "login", login, "password", password);
    }

    /** Whether the first page answers instead of asking for a sign-in. */
    public boolean isIn() {
        return get("/").statusCode() == 200;
    }

    public String sessionId() {
        return cookies.getCookieStore().getCookies().stream()
                .map(HttpCookie::getValue)
                .findFirst()
                .orElse("");
    }

    private URI uri(String path) {
        return URI.create("http://localhost:" + port + path);
    }

    private HttpResponse<String> send(HttpRequest.Builder request) {
        try {
            return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(interrupted);
        }
    }

    private static String encode(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }
}
