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
        String token = token(browser.get("/sign-in"));
        String form = "login=" + login + "&password=" + encoded(password) + "&_csrf=" + encoded(token);
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

    /** Posts a form and gives the address it leads to. */
    String post(String path, String page, String form) throws IOException, InterruptedException {
        return sent(
                path,
                "application/x-www-form-urlencoded",
                HttpRequest.BodyPublishers.ofString(form + "&_csrf=" + encoded(token(page))));
    }

    /** Posts a file as the field {@code file} and gives the address it leads to. */
    String upload(String path, String page, String name, byte[] content) throws IOException, InterruptedException {
        String head = "--bench\r\nContent-Disposition: form-data; name=\"_csrf\"\r\n\r\n" + token(page)
                + "\r\n--bench\r\nContent-Disposition: form-data; name=\"file\"; filename=\"" + name
                + "\"\r\nContent-Type: text/csv\r\n\r\n";
        return sent(
                path,
                "multipart/form-data; boundary=bench",
                HttpRequest.BodyPublishers.concat(
                        HttpRequest.BodyPublishers.ofString(head),
                        HttpRequest.BodyPublishers.ofByteArray(content),
                        HttpRequest.BodyPublishers.ofString("\r\n--bench--\r\n")));
    }

    private String sent(String path, String type, HttpRequest.BodyPublisher body)
            throws IOException, InterruptedException {
        HttpResponse<String> answer = client.send(
                HttpRequest.newBuilder(URI.create(server + path))
                        .header("Content-Type", type)
                        .POST(body)
                        .build(),
                BodyHandlers.ofString());
        if (answer.statusCode() != 302) {
            throw new IllegalStateException(path + " gave " + answer.statusCode());
        }
        return URI.create(answer.headers().firstValue("Location").orElseThrow()).getPath();
    }

    private static String token(String page) {
        Matcher token = TOKEN.matcher(page);
        if (!token.find()) {
            throw new IllegalStateException("The page has no token");
        }
        return token.group(1);
    }

    static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }
}
