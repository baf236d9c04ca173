package app.ramkeeper.bench.pages;

import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A signed-in client with its own cookies. */
final class Browser {

    private static final Pattern TOKEN = Pattern.compile("name=\"_csrf\"[^>]*value=\"([^\"]+)\"");

    private final String server;
    private final HttpClient client = HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .cookieHandler(new CookieManager())
            .build();

    private Browser(String server) {
        this.server = server;
    }

    static Browser signedIn(String server, String login, String password) throws IOException, InterruptedException {
        Browser browser = new Browser(server);
        Matcher token = TOKEN.matcher(browser.get("/sign-in"));
        if (!token.find()) {
            throw new IllegalStateException("The sign-in page has no token");
        }
        String form = "login=" + login + "&password=" + encoded(password) + "&_csrf=" + encoded(token.group(1));
        HttpResponse<String> answer = browser.client.send(
                HttpRequest.newBuilder(URI.create(server + "/sign-in"))
                        .header("Content-Type", "application/x-www-form-urlencoded")
                        .POST(HttpRequest.BodyPublishers.ofString(form))
                        .build(),
                BodyHandlers.ofString());
        String where = answer.headers().firstValue("Location").orElse("");
        if (answer.statusCode() != 302 || where.contains("sign-in")) {
            throw new IllegalStateException("Sign-in of " + login + " gave " + answer.statusCode() + " " + where);
        }
        return browser;
    }

    /** The page's text; anything but 200 ends the run, for a refusal is no measurement. */
    String get(String path) throws IOException, InterruptedException {
        HttpResponse<String> answer =
                client.send(HttpRequest.newBuilder(URI.create(server + path)).build(), BodyHandlers.ofString());
        if (answer.statusCode() != 200) {
            throw new IllegalStateException(path + " gave " + answer.statusCode());
        }
        return answer.body();
    }

    static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }
}
