package app.ramkeeper.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.identity.Role;
import app.ramkeeper.identity.people.Accounts.NewAccount;
import app.ramkeeper.identity.signin.CodeDevice;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Response;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.context.annotation.Import;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.core.authority.FactorGrantedAuthority;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextImpl;
import org.springframework.session.FindByIndexNameSessionRepository;
import org.springframework.session.Session;

/** Second factors with a virtual security key, where each sign-in needs two factors. */
@SpringBootTest(
        webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = {"ramkeeper.second-factor=required", "ramkeeper.public-address=http://localhost:8080"})
@Import(TestDatabase.class)
class PasskeyBrowserTests extends BrowserRun {

    private static final String PUBLIC = "localhost:8080";
    private static final String CONTEXT = "SPRING_SECURITY_CONTEXT";

    @Autowired
    FindByIndexNameSessionRepository<? extends Session> sessions;

    private final String password = "a pass phrase of " + UUID.randomUUID();
    private String login = "";

    /** Keys belong to the public address; the browser finds the test's port behind it. */
    @Override
    List<String> arguments() {
        List<String> all = new ArrayList<>(super.arguments());
        all.add("--host-resolver-rules=MAP " + PUBLIC + " 127.0.0.1:" + port);
        return all;
    }

    @Override
    String address() {
        return "http://" + PUBLIC;
    }

    @BeforeEach
    void makeAccount() {
        login = "keys-" + UUID.randomUUID();
        accounts.create(new NewAccount(
                accounts.addPerson("Fern Kettle"), login, password, Set.of(Role.OFFICE, Role.ADMINISTRATOR)));
    }

    @Test
    @DisplayName(
            "SEC-52 a verified passkey signs in alone; a second is added, the first removed, the last way in stays")
    void sec52KeysComeAndGoButTheLastStays() {
        Page page = desk();
        enrolCodes(page);
        SecurityKey first = new SecurityKey(page, true);
        addKey(page, "Barn phone");
        first.touched(false);
        SecurityKey second = new SecurityKey(page, true);
        addKey(page, "Key fob");
        assertThat(keys(page)).hasText(new String[] {"Barn phone", "Key fob"});
        isAccessible(page);
        page.locator("form[action='/account/codes/remove'] button").click();
        assertThat(page.locator("form[action='/account/codes/remove']")).hasCount(0);

        byPassword(page);
        assertThat(page).hasURL(address() + "/sign-in/code?next=%2F");
        isAccessible(page);
        useKey(page);
        assertThat(page).hasURL(address() + "/");
        byKeyAlone(page);

        remove(page, "Barn phone");
        assertThat(keys(page)).hasText(new String[] {"Key fob"});
        Response last = page.waitForResponse("**/remove", () -> remove(page, "Key fob"));
        assertThat(last.status()).isEqualTo(409);
        assertThat(page.locator("main")).containsText("your last second factor");
        isAccessible(page);
        page.navigate("/account");
        assertThat(keys(page)).hasText(new String[] {"Key fob"});

        second.touched(false);
        first.touched(true);
        signOut(page);
        assertThat(answerOf(page, "/sign-in/passkey", () -> useKey(page))).isEqualTo(401);
        assertThat(page.locator("[data-passkey] [role=alert]")).containsText("not accepted");
        isAccessible(page);
    }

    @Test
    @DisplayName(
            "SEC-52 a device that did not verify its user makes no key and opens nothing, whatever the page asked of it")
    void sec52RefusesAnUnverifiedUser() {
        Page page = desk();
        enrolCodes(page);
        SecurityKey key = new SecurityKey(page, true);
        addKey(page, "Barn phone");
        String id = page.locator("form[action^='/account/passkeys/']")
                .getAttribute("action")
                .split("/")[3];
        key.touched(false);
        SecurityKey plain = new SecurityKey(page, false);
        page.navigate("/account/passkeys/new");
        tamper(page, "discouraged", id);
        assertThat(answerOf(
                        page,
                        "/account/passkeys",
                        () -> page.locator("[data-passkey-new] button").click()))
                .isEqualTo(422);
        page.navigate("/account");
        assertThat(keys(page)).hasText(new String[] {"Barn phone"});

        plain.touched(false);
        key.touched(true);
        signOut(page);
        tamper(page, "required", id);
        assertThat(answerOf(page, "/sign-in/passkey", () -> useKey(page))).isEqualTo(200);
        page.waitForURL(address() + "/");
        key.verified(false);
        signOut(page);
        tamper(page, "discouraged", id);
        assertThat(answerOf(page, "/sign-in/passkey", () -> useKey(page))).isEqualTo(401);
        page.navigate("/account");
        assertThat(page).hasURL(Pattern.compile(".*/sign-in.*"));
    }

    @Test
    @DisplayName("SEC-52 keys are added and removed only after a fresh sign-in")
    void sec52AsksForAFreshSignIn() {
        Page page = desk();
        enrolCodes(page);
        new SecurityKey(page, true);
        addKey(page, "Barn phone");
        age(sessions);

        remove(page, "Barn phone");
        assertThat(page).hasURL(address() + "/account/confirm?next=/account");
        isAccessible(page);
        page.navigate("/account");
        assertThat(keys(page)).hasText(new String[] {"Barn phone"});
        page.navigate("/account/passkeys/new");
        assertThat(page).hasURL(address() + "/account/confirm?next=/account/passkeys/new");

        page.locator("#password").fill("not this one");
        page.locator("main button.primary").click();
        assertThat(page.locator("#problem")).isVisible();
        isAccessible(page);
        page.locator("#password").fill(password);
        page.locator("main button.primary").click();
        assertThat(page).hasURL(address() + "/account/passkeys/new");
        page.navigate("/account");
        remove(page, "Barn phone");
        assertThat(keys(page)).hasCount(0);
    }

    private void enrolCodes(Page page) {
        open(page, "/sign-in");
        byPassword(page);
        assertThat(page).hasURL(address() + "/sign-in/enrol");
        isAccessible(page);
        CodeDevice device = new CodeDevice(page.locator("code.typed").innerText());
        code(page, "123");
        assertThat(page.locator("#problem")).isVisible();
        isAccessible(page);
        code(page, device.code(clock.instant()));
        assertThat(page.locator("main li code")).hasCount(10);
        isAccessible(page);
        open(page, "/account");
    }

    private static void code(Page page, String code) {
        page.locator("#code").fill(code);
        page.locator("main button.primary").click();
    }

    private void byPassword(Page page) {
        signOut(page);
        page.locator("#login").fill(login);
        page.locator("#password").fill(password);
        page.locator("main button.primary").click();
    }

    private void byKeyAlone(Page page) {
        signOut(page);
        useKey(page);
        page.waitForURL(address() + "/");
        open(page, "/account");
    }

    private static void signOut(Page page) {
        page.context().clearCookies();
        page.navigate("/sign-in");
    }

    private static void useKey(Page page) {
        page.locator("[data-passkey] button").click();
    }

    private void addKey(Page page, String name) {
        open(page, "/account/passkeys/new");
        page.locator("#label").fill(name);
        page.locator("[data-passkey-new] button").click();
        page.waitForURL(address() + "/account");
    }

    private static Locator keys(Page page) {
        return page.locator("li.entry:has(form[action^='/account/passkeys/']) strong");
    }

    private static void remove(Page page, String name) {
        page.locator("li.entry", new Page.LocatorOptions().setHasText(name))
                .locator("form[action^='/account/passkeys/'] button")
                .click();
    }

    /** What the server says to what the key answered. */
    private int answerOf(Page page, String path, Runnable doing) {
        return page.waitForResponse(answer -> answer.url().split("\\?")[0].equals(address() + path), doing)
                .status();
    }

    /** A page that was tampered with: it asks one device by its key, and no longer to verify its user. */
    private static void tamper(Page page, String verification, String key) {
        page.evaluate("""
                ({ verification, key }) => ['create', 'get'].forEach((name) => {
                  const real = navigator.credentials[name].bind(navigator.credentials);
                  navigator.credentials[name] = ({ publicKey }) => {
                    const criteria = publicKey.authenticatorSelection || publicKey;
                    if (criteria.userVerification !== 'required') {
                      throw new Error('the page did not ask for a verified user');
                    }
                    criteria.userVerification = verification;
                    criteria.residentKey = 'discouraged';
                    criteria.requireResidentKey = false;
                    const bytes = atob(key.replace(/-/g, '+').replace(/_/g, '/'));
                    publicKey.allowCredentials = [{ type: 'public-key', id: Uint8Array.from(bytes, (c) => c.charCodeAt(0)) }];
                    return real({ publicKey });
                  };
                })""", Map.of("verification", verification, "key", key));
    }

    /** Lets every factor of the account's sessions be eleven minutes old. */
    private <S extends Session> void age(FindByIndexNameSessionRepository<S> repository) {
        repository.findByPrincipalName(login).values().forEach(session -> {
            SecurityContext context = session.getAttribute(CONTEXT);
            Authentication who = context.getAuthentication();
            List<GrantedAuthority> older = who.getAuthorities().stream()
                    .map(PasskeyBrowserTests::older)
                    .toList();
            session.setAttribute(
                    CONTEXT,
                    new SecurityContextImpl(new UsernamePasswordAuthenticationToken(who.getPrincipal(), null, older)));
            repository.save(session);
        });
    }

    private static GrantedAuthority older(GrantedAuthority held) {
        return held instanceof FactorGrantedAuthority factor
                ? FactorGrantedAuthority.withAuthority(factor.getAuthority())
                        .issuedAt(factor.getIssuedAt().minus(Duration.ofMinutes(11)))
                        .build()
                : held;
    }
}
