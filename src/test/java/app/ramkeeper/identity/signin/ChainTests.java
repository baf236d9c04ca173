package app.ramkeeper.identity.signin;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.Role;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.ApplicationContext;
import org.springframework.context.annotation.Import;
import org.springframework.http.HttpMethod;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.security.authentication.AuthenticationProvider;
import org.springframework.security.web.FilterChainProxy;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.test.web.servlet.assertj.MockMvcTester;

/** The chain of checks under an https address. */
@SpringBootTest(properties = "ramkeeper.public-address=https://pumps.example.org")
@AutoConfigureMockMvc
@Import(TestDatabase.class)
class ChainTests {

    @Autowired
    MockMvcTester mvc;

    @Autowired
    FilterChainProxy chains;

    @Autowired
    ApplicationContext context;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/sign-in",
                "/due",
                "/nothing/here",
                "/css/ramkeeper.css",
                "/sites/not-an-id",
                "/denied",
                "/x?a=%00"
            })
    @DisplayName("SEC-26 SEC-28 SEC-74 every answer carries the strict headers, failures included")
    void sec28StrictHeaders(String path) {
        MockHttpServletResponse answer = get(path, Role.OFFICE);

        assertThat(answer.getHeader("Strict-Transport-Security"))
                .contains("max-age=31536000")
                .contains("includeSubDomains");
        assertThat(answer.getHeader("Content-Security-Policy"))
                .contains("default-src 'none'", "object-src 'none'", "base-uri 'none'", "frame-ancestors 'none'")
                .contains("form-action 'self'", "script-src 'self'")
                .doesNotContain("unsafe-inline", "unsafe-eval", "*");
        assertThat(answer.getHeader("X-Content-Type-Options")).isEqualTo("nosniff");
        assertThat(answer.getHeader("Referrer-Policy")).isEqualTo("same-origin");
        assertThat(answer.getHeader("Cross-Origin-Opener-Policy")).isEqualTo("same-origin");
        assertThat(answer.getHeader("Cross-Origin-Resource-Policy")).isEqualTo("same-origin");
        assertThat(answer.getHeader("Permissions-Policy")).contains("geolocation=(self)", "payment=()");
        assertThat(answer.getHeader("Cache-Control")).isEqualTo(path.startsWith("/css") ? "no-cache" : "no-store");
    }

    @Test
    @DisplayName("SEC-74 a file named by its content may be kept, a missing one may not")
    void sec74KeepsHashedFiles() {
        String page = body("/sign-in");
        String css = page.replaceAll("(?s).*href=\"(/css/[^\"]+)\".*", "$1");

        assertThat(css).matches("/css/ramkeeper-[0-9a-f]{32}\\.css");
        assertThat(get(css, null).getHeader("Cache-Control")).isEqualTo("public, max-age=31536000, immutable");
        assertThat(get("/css/none-0123456789abcdef0123456789abcdef.css", null).getHeader("Cache-Control"))
                .isEqualTo("no-store");
    }

    @Test
    @DisplayName("SEC-25 the session cookie is bound to the host and hidden from scripts, and there is no other")
    void sec25CookieIsBound() {
        List<String> cookies = get("/sign-in", null).getHeaders("Set-Cookie");

        assertThat(cookies).hasSize(1);
        assertThat(cookies.get(0))
                .startsWith("__Host-ramkeeper=")
                .contains("Path=/", "Secure", "HttpOnly", "SameSite=Lax")
                .doesNotContain("Domain");
    }

    @ParameterizedTest
    @ValueSource(strings = {"https://evil.example", "null", "https://pumps.example.org.evil.example"})
    @DisplayName("SEC-27 no other origin is granted anything")
    void sec27GrantsNoOrigin(String origin) {
        var plain =
                mvc.get().uri("/sign-in").header("Origin", origin).exchange().getResponse();
        var preflight = mvc.options()
                .uri("/due")
                .header("Origin", origin)
                .header("Access-Control-Request-Method", "POST")
                .exchange()
                .getResponse();

        assertThat(plain.getHeaderNames()).noneMatch(name -> name.startsWith("Access-Control-"));
        assertThat(preflight.getHeaderNames()).noneMatch(name -> name.startsWith("Access-Control-"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/.git/config",
                "/.env",
                "/h2-console",
                "/actuator",
                "/actuator/env",
                "/actuator/heapdump",
                "/actuator/mappings",
                "/v3/api-docs",
                "/application.properties",
                "/db/migration/V0001__shared_create_extensions.sql",
                "/js/../application.properties"
            })
    @DisplayName("SEC-37 nothing internal is reachable")
    void sec37NothingInternal(String path) {
        assertThat(get(path, null).getStatus()).isIn(302, 400, 401, 404);
        assertThat(get(path, Role.ADMINISTRATOR).getStatus()).isIn(400, 403, 404);
    }

    @Test
    @DisplayName("SEC-37 health says up and no more")
    void sec37HealthIsTerse() throws Exception {
        assertThat(get("/actuator/health", null).getContentAsString())
                .contains("UP")
                .doesNotContain("postgres", "components", "diskSpace", "PostgreSQL");
    }

    @Test
    @DisplayName("SEC-35 what a stranger claims to have forwarded is not believed")
    void sec35ForwardedHeadersAreIgnored() throws Exception {
        var answer = mvc.get()
                .uri("/due")
                .header("X-Forwarded-Host", "evil.example")
                .header("X-Forwarded-Proto", "http")
                .header("X-Forwarded-For", "203.0.113.9")
                .header("Host", "evil.example")
                .exchange()
                .getResponse();

        assertThat(answer.getHeader("Location")).isEqualTo("/sign-in?next=%2Fdue");
    }

    @ParameterizedTest
    @ValueSource(strings = {"TRACE", "PUT", "DELETE", "PATCH"})
    @DisplayName("SEC-37 methods that no page uses are refused")
    void sec37OtherMethods(String method) {
        int status = mvc.method(HttpMethod.valueOf(method))
                .uri("/due")
                .with(user(person(Role.OFFICE)))
                .exchange()
                .getResponse()
                .getStatus();

        assertThat(status).isIn(400, 403, 405);
    }

    @Test
    @DisplayName(
            "SEC-53 there is one chain and one way to check a password, and the ways in are those that are written down")
    void sec53WaysInAreListed() {
        assertThat(chains.getFilterChains()).hasSize(1);
        assertThat(context.getBeansOfType(SecurityFilterChain.class)).hasSize(1);
        assertThat(context.getBeansOfType(AuthenticationProvider.class).values())
                .singleElement()
                .isInstanceOf(PasswordSignIn.class);
        assertThat(chains.getFilterChains().get(0).getFilters().stream()
                        .map(filter -> filter.getClass().getSimpleName())
                        .filter(name -> name.contains("Authentication")
                                || name.contains("RememberMe")
                                || name.contains("Bearer")))
                .containsExactlyInAnyOrder("UsernamePasswordAuthenticationFilter", "AnonymousAuthenticationFilter");
    }

    @Test
    @DisplayName("SEC-79 a script gets a problem with a number, a person a page, and neither sees the inside")
    void sec79ProblemsForScripts() throws Exception {
        var problem = mvc.get()
                .uri("/sites/" + UUID.randomUUID())
                .with(user(person(Role.OFFICE)))
                .header("Accept", "application/json")
                .exchange()
                .getResponse();

        assertThat(problem.getStatus()).isEqualTo(404);
        assertThat(problem.getContentType()).startsWith("application/problem+json");
        assertThat(problem.getContentAsString()).contains("\"status\":404").doesNotContain("app.ramkeeper", "select ");
    }

    private MockHttpServletResponse get(String path, @org.jspecify.annotations.Nullable Role role) {
        var request = mvc.get().uri(java.net.URI.create(path));
        return (role == null ? request : request.with(user(person(role))))
                .exchange()
                .getResponse();
    }

    private String body(String path) {
        try {
            return get(path, null).getContentAsString();
        } catch (java.io.UnsupportedEncodingException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private static CurrentUser person(Role role) {
        return new CurrentUser(UUID.randomUUID(), UUID.randomUUID(), "chain", "Chain", Set.of(role), null);
    }
}
