package app.ramkeeper.identity.signin;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.identity.AccountId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.identity.WebVisitor;
import app.ramkeeper.identity.people.Accounts;
import app.ramkeeper.identity.people.Accounts.NewAccount;
import java.time.Clock;
import java.util.HashSet;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;

/** Signing in with a second factor, over http as a browser does it. */
@SpringBootTest(
        webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = {"ramkeeper.second-factor=required", "ramkeeper.public-address=http://localhost:8080"})
@Import(TestDatabase.class)
@ExtendWith(OutputCaptureExtension.class)
class SignInTests {

    private static final String PASSWORD = "  a long Weir päss 🚰 phrase ";

    @LocalServerPort
    int port;

    @Autowired
    Accounts accounts;

    @Autowired
    SecondFactor factors;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Clock clock;

    private final String login = "sedge-" + UUID.randomUUID();
    private final byte[] secret = Tokens.bytes(20);

    /** All tests come from one address, as nobody else does. */
    @AfterEach
    void forgetTries() {
        jdbc.sql("delete from attempts").update();
    }

    @Test
    @DisplayName("SEC-51 a password alone opens nothing until the second factor is given")
    void sec51AsksForTheSecondFactor() {
        enrolled(Role.ADMINISTRATOR);
        WebVisitor visitor = new WebVisitor(port);

        var answer = visitor.signIn(login, PASSWORD);

        assertThat(answer.headers().firstValue("Location"))
                .hasValueSatisfying(to -> assertThat(to).startsWith("/sign-in/code"));
        assertThat(visitor.isIn()).isFalse();
        assertThat(visitor.get("/people").statusCode()).isEqualTo(403);
        assertThat(visitor.get("/account/codes").statusCode()).isEqualTo(403);
        assertThat(visitor.get("/sign-in/enrol").headers().firstValue("Location"))
                .hasValue("/sign-in/code");
        assertThat(code(visitor, "000000").statusCode()).isEqualTo(422);
        assertThat(visitor.isIn()).isFalse();

        assertThat(code(visitor, rightCode()).headers().firstValue("Location")).hasValue("/");
        assertThat(visitor.isIn()).isTrue();
        assertThat(visitor.get("/people").statusCode()).isEqualTo(200);
    }

    @Test
    @DisplayName("SEC-51 the first sign-in sets codes up and shows recovery codes once")
    void sec51SetsUpAtFirstSignIn() {
        account(Role.OFFICE);
        WebVisitor visitor = new WebVisitor(port);
        visitor.signIn(login, PASSWORD);

        String page = visitor.get("/sign-in/enrol").body();
        var shown = Pattern.compile("<code class=\"typed\">([A-Z2-7 ]+)</code>").matcher(page);
        assertThat(shown.find()).isTrue();
        String code = new CodeDevice(shown.group(1)).code(clock.instant());

        assertThat(visitor.submit("/sign-in/enrol", "/sign-in/enrol", "code", "123")
                        .statusCode())
                .isEqualTo(422);
        assertThat(visitor.submit("/sign-in/enrol", "/sign-in/enrol", "code", code)
                        .body())
                .contains("Recovery codes");
        assertThat(visitor.isIn()).isTrue();
    }

    @Test
    @DisplayName("SEC-58 the session id changes at each step, and the old ones are dead")
    void sec58ChangesTheSessionId() {
        enrolled(Role.OFFICE);
        WebVisitor visitor = new WebVisitor(port);
        visitor.get("/sign-in");
        String before = visitor.sessionId();
        visitor.signIn(login, PASSWORD);
        String half = visitor.sessionId();
        code(visitor, rightCode());
        String full = visitor.sessionId();

        assertThat(Set.of(before, half, full)).hasSize(3);
        for (String old : Set.of(before, half)) {
            assertThat(new WebVisitor(port)
                            .get("/", "Cookie", "ramkeeper=" + old)
                            .statusCode())
                    .isEqualTo(302);
        }
        assertThat(new WebVisitor(port).get("/", "Cookie", "ramkeeper=" + full).statusCode())
                .isEqualTo(200);
    }

    @Test
    @DisplayName("SEC-45 a password is taken exactly as typed")
    void sec45TakesThePasswordAsTyped() {
        account(Role.OFFICE);

        for (String nearly : new String[] {
            PASSWORD.strip(), PASSWORD.toLowerCase(java.util.Locale.ROOT), PASSWORD.substring(0, PASSWORD.length() - 2)
        }) {
            assertThat(new WebVisitor(port).signIn(login, nearly).statusCode()).isEqualTo(422);
        }
        assertThat(new WebVisitor(port).signIn(login, PASSWORD).statusCode()).isEqualTo(302);
    }

    @ParameterizedTest
    @ValueSource(strings = {"admin", "user", "root", "administrator", "postgres"})
    @DisplayName("SEC-50 no default account answers")
    void sec50NoDefaultAccounts(String name) {
        for (String password : new String[] {name, "", "password", "changeme"}) {
            jdbc.sql("delete from attempts").update();
            assertThat(new WebVisitor(port).signIn(name, password).statusCode()).isEqualTo(422);
        }
    }

    @Test
    @DisplayName("SEC-49 guessing one account is slowed with 429 and Retry-After, and the typed name is kept")
    void sec49SlowsGuessing() {
        account(Role.OFFICE);
        java.net.http.HttpResponse<String> last = null;
        for (int i = 0; i < 6; i++) {
            last = new WebVisitor(port).signIn(login, "wrong " + i);
        }

        assertThat(last.statusCode()).isEqualTo(429);
        assertThat(last.headers().firstValueAsLong("Retry-After").orElse(0)).isBetween(1L, 20L);
        assertThat(last.body()).contains("value=\"" + login + "\"");
        jdbc.sql("update attempts set updated_at = updated_at - interval '30 seconds'")
                .update();
        assertThat(new WebVisitor(port).signIn(login, PASSWORD).statusCode()).isEqualTo(302);
    }

    @Test
    @DisplayName("SEC-49 one network guessing over many accounts is slowed too")
    void sec49SlowsSpraying() {
        Set<Integer> answers = new HashSet<>();
        for (int i = 0; i < 65; i++) {
            answers.add(
                    new WebVisitor(port).signIn("nobody-" + i, "Spring2026!").statusCode());
        }
        assertThat(answers).containsExactlyInAnyOrder(422, 429);
    }

    @Test
    @DisplayName("SEC-57 session ids carry 256 random bits and never repeat")
    void sec57SessionIdsAreLong() {
        Set<String> ids = new HashSet<>();
        for (int i = 0; i < 50; i++) {
            WebVisitor visitor = new WebVisitor(port);
            visitor.get("/sign-in");
            ids.add(visitor.sessionId());
        }
        assertThat(ids)
                .hasSize(50)
                .allMatch(id -> java.util.Base64.getUrlDecoder().decode(id).length == 32);
    }

    @Test
    @DisplayName("SEC-59 a session ends when idle too long, and at its absolute age however busy")
    void sec59EndsSessions() {
        WebVisitor idle = in(Role.OFFICE);
        jdbc.sql(
                        "update spring_session set last_access_time = last_access_time - 13 * 3600000, expiry_time = expiry_time - 13 * 3600000 where principal_name = ?")
                .param(login)
                .update();

        var answer = idle.get("/due", "Accept", "text/html");

        assertThat(answer.statusCode()).isEqualTo(302);
        assertThat(answer.headers().firstValue("Location")).hasValue("/sign-in?next=%2Fdue");
        assertThat(idle.get("/due", "HX-Request", "true").statusCode()).isEqualTo(401);
        assertThat(idle.get("/due", "Accept", "application/json").statusCode()).isEqualTo(401);
    }

    @Test
    @DisplayName("SEC-60 signing out ends the session for every node")
    void sec60SignsOut() {
        WebVisitor visitor = in(Role.OFFICE);
        String id = visitor.sessionId();

        var answer = visitor.submit("/account", "/sign-out");

        assertThat(answer.headers().firstValue("Location")).hasValue("/sign-in?out");
        assertThat(new WebVisitor(port).get("/", "Cookie", "ramkeeper=" + id).statusCode())
                .isEqualTo(302);
        assertThat(jdbc.sql("select count(*) from spring_session where session_id = ?")
                        .param(id)
                        .query(Long.class)
                        .single())
                .isZero();
    }

    @Test
    @DisplayName("SEC-70 passwords are Argon2id of 19 MiB, 2 rounds, 1 lane, and weaker hashes are renewed at sign-in")
    void sec70RenewsWeakHashes() {
        AccountId account = account(Role.OFFICE);
        jdbc.sql("update accounts set password_hash = ? where id = ?")
                .params("{argon2id}" + new Argon2PasswordEncoder(16, 32, 1, 8192, 1).encode(PASSWORD), account.value())
                .update();

        new WebVisitor(port).signIn(login, PASSWORD);

        assertThat(jdbc.sql("select password_hash from accounts where id = ?")
                        .param(account.value())
                        .query(String.class)
                        .single())
                .startsWith("{argon2id}$argon2id$v=19$m=19456,t=2,p=1$");
        assertThat(new WebVisitor(port).signIn(login, PASSWORD).statusCode()).isEqualTo(302);
    }

    @Test
    @DisplayName("SEC-76 SEC-77 SEC-78 each event is one line without secrets, and none can be forged")
    void sec76Logs(CapturedOutput output) {
        WebVisitor visitor = in(Role.OFFICE);
        String sessionId = visitor.sessionId();
        visitor.get("/people");
        visitor.submit("/account", "/sign-out");
        new WebVisitor(port)
                .signIn("eve\r\ntime=0 event=sign-in result=passed who=\"root\"\u001b[2J", "a secret guess");

        assertThat(output)
                .contains("event=sign-in result=passed who=\"" + login + "\" from=\"127.0.0.1\" detail=\"password\"");
        assertThat(output)
                .contains("event=sign-in result=passed who=\"" + login + "\" from=\"127.0.0.1\" detail=\"code\"");
        assertThat(output).contains("event=access result=denied who=\"" + login + "\"");
        assertThat(output).contains("event=sign-out result=passed who=\"" + login + "\"");
        assertThat(output.toString().lines().filter(line -> line.contains("eve\\u000d\\u000atime=0")))
                .hasSize(1);
        assertThat(output.toString().lines()).noneMatch(line -> line.startsWith("time=0"));
        assertThat(output).doesNotContain(PASSWORD.strip(), "a secret guess", sessionId, Totp.base32(secret));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/css/",
                "/js/",
                "/webjars/",
                "/fonts/../application.properties",
                "/css/..%2f..%2fapplication.properties"
            })
    @DisplayName("SEC-37 folders are not listed and nothing beside them is read")
    void sec37NoListings(String path) {
        var answer = new WebVisitor(port).get(path);

        assertThat(answer.statusCode()).isIn(302, 400, 404);
        assertThat(answer.body()).doesNotContain("ramkeeper.zone");
    }

    private AccountId account(Role role) {
        return accounts.create(new NewAccount(accounts.addPerson("Sedge Tarn"), login, PASSWORD, Set.of(role)));
    }

    private void enrolled(Role role) {
        long step = clock.instant().getEpochSecond() / Totp.STEP_SECONDS;
        factors.enrol(account(role).value(), secret, Totp.code(secret, step - 1, 6));
    }

    private WebVisitor in(Role role) {
        enrolled(role);
        WebVisitor visitor = new WebVisitor(port);
        visitor.signIn(login, PASSWORD);
        code(visitor, rightCode());
        assertThat(visitor.isIn()).isTrue();
        return visitor;
    }

    private static java.net.http.HttpResponse<String> code(WebVisitor visitor, String code) {
        return visitor.submit("/sign-in/code", "/sign-in/code", "code", code);
    }

    private String rightCode() {
        return Totp.code(secret, clock.instant().getEpochSecond() / Totp.STEP_SECONDS, 6);
    }
}
