package app.ramkeeper.browser;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.Needs;
import app.ramkeeper.TestDatabase;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.identity.people.Accounts;
import app.ramkeeper.identity.people.Accounts.NewAccount;
import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.Rule;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.TestInstance;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import org.springframework.transaction.support.TransactionTemplate;

/** Starts the application and a browser; every page that a test opens is checked as it goes. */
@SpringBootTest(webEnvironment = WebEnvironment.RANDOM_PORT, properties = "ramkeeper.second-factor=off")
@Import(TestDatabase.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
abstract class BrowserRun {

    private static final List<String> ARGUMENTS = List.of(
            "--no-sandbox",
            "--disable-gpu",
            "--disable-quic",
            "--no-first-run",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync");
    private static final List<String> TAGS = List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa");

    @LocalServerPort
    int port;

    @Autowired
    Accounts accounts;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    Clock clock;

    private Playwright playwright;
    private Browser browser;

    /** What a page did that no page may do: requests to other hosts, errors of its scripts, breaches of the content policy. */
    final List<String> misdeeds = new ArrayList<>();

    private final List<BrowserContext> contexts = new ArrayList<>();

    @BeforeAll
    void startBrowser() {
        Path chromium = Needs.browser();
        playwright = Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        browser = playwright
                .chromium()
                .launch(new BrowserType.LaunchOptions()
                        .setExecutablePath(chromium)
                        .setArgs(arguments()));
    }

    /** How the browser is started. */
    List<String> arguments() {
        return ARGUMENTS;
    }

    @AfterEach
    void behavedWell() {
        contexts.forEach(BrowserContext::close);
        contexts.clear();
        misdeeds.removeIf(this::expected);
        assertThat(misdeeds).isEmpty();
    }

    /** What a run does on purpose, such as cutting its own line. */
    boolean expected(String misdeed) {
        return false;
    }

    @AfterAll
    void stopBrowser() {
        if (playwright != null) {
            playwright.close();
        }
    }

    /** A window of a desk or a phone; it stands where the company does, else its today is another for half of each day. */
    Page window(int width, int height) {
        BrowserContext context = browser.newContext(new Browser.NewContextOptions()
                .setViewportSize(width, height)
                .setLocale("en-NZ")
                .setTimezoneId(clock.getZone().getId())
                .setBaseURL(address()));
        contexts.add(context);
        Page page = context.newPage();
        page.onRequest(request -> {
            if (!request.url().startsWith(address())
                    && !request.url().startsWith("blob:" + address())
                    && !request.url().startsWith("data:")) {
                misdeeds.add("request to " + request.url());
            }
        });
        page.onPageError(misdeeds::add);
        page.onConsoleMessage(message -> {
            if (message.type().equals("error") && !message.text().contains("status of 4")) {
                misdeeds.add(message.text());
            }
        });
        return page;
    }

    /** Where the browser finds the application. */
    String address() {
        return "http://localhost:" + port;
    }

    Page desk() {
        return window(1280, 900);
    }

    Page phone() {
        return window(390, 844);
    }

    /** A new account with these roles, signed in. */
    PersonId signIn(Page page, String name, Role... roles) {
        String login = "login-" + UUID.randomUUID();
        String password = "a pass phrase of " + UUID.randomUUID();
        PersonId person = transaction.execute(status -> {
            PersonId made = accounts.addPerson(name);
            accounts.create(new NewAccount(made, login, password, Set.of(roles)));
            return made;
        });
        page.navigate("/sign-in");
        page.getByLabel("Sign-in name").fill(login);
        page.getByLabel("Password").first().fill(password);
        page.locator("main button[type=submit]").first().click();
        page.waitForURL(address -> !address.contains("/sign-in"));
        return person;
    }

    /** Opens a page, expects it to answer well, and checks it. */
    void open(Page page, String path) {
        var answer = page.navigate(path);
        assertThat(answer.status()).as(path).isEqualTo(200);
        isAccessible(page);
    }

    /** Checks the page as it stands against WCAG 2.2 AA. */
    void isAccessible(Page page) {
        List<Rule> broken = new AxeBuilder(page).withTags(TAGS).analyze().getViolations();
        assertThat(broken.stream()
                        .map(rule -> rule.getId() + ": "
                                + rule.getNodes().stream()
                                        .limit(3)
                                        .map(node -> node.getTarget() + " " + node.getHtml())
                                        .toList())
                        .toList())
                .as(page.url())
                .isEmpty();
    }
}
