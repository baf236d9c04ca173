package app.ramkeeper.identity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.TestDatabase;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.core.annotation.AnnotatedElementUtils;
import org.springframework.core.io.ClassPathResource;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.http.HttpMethod;
import org.springframework.http.MediaType;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.security.access.prepost.PreAuthorize;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

/**
 * Every route of the application against one table, {@code routes.csv}: route, method, who may. A route that is missing
 * there fails; the message holds the lines to add, once somebody has thought about them.
 */
@SpringBootTest
@AutoConfigureMockMvc
@Import(TestDatabase.class)
class RouteMatrixTests {

    private static final String ANYBODY = "anybody";
    private static final String HALF = "half-signed-in";
    private static final String ID = "00000000-0000-7000-8000-000000000000";

    private record Route(String path, String method) {}

    @Autowired
    MockMvcTester mvc;

    @Autowired
    @Qualifier("requestMappingHandlerMapping")
    RequestMappingHandlerMapping mapping;

    @Test
    @DisplayName("SEC-63 the table names every route and its roles, and nothing else")
    void sec63TableIsComplete() throws IOException {
        List<String> inCode = lines(declared());
        List<String> inTable = lines(table());

        assertThat(inCode.stream().filter(line -> !inTable.contains(line)).toList())
                .as("lines to review and add to src/test/resources/routes.csv")
                .isEmpty();
        assertThat(inTable.stream().filter(line -> !inCode.contains(line)).toList())
                .as("lines of routes.csv that no route answers to")
                .isEmpty();
    }

    @Test
    @DisplayName("SYN-08 only pins are changed by PUT, PATCH or DELETE, never without If-Match; all else is a post")
    void syn08NoChangeWithoutItsVersion() {
        List<Route> others = declared().keySet().stream()
                .filter(route -> Set.of("PUT", "PATCH", "DELETE").contains(route.method()))
                .toList();
        assertThat(others).containsExactly(new Route("/field/pins", "PUT"));
        assertThat(others).allMatch(route -> ask(route, Role.TECHNICIAN, true) == 428);
    }

    @Test
    @DisplayName("SEC-63 SEC-66 each role gets in where the table says so, and is refused everywhere else")
    void sec63EachRoleIsHeldToTheTable() throws IOException {
        List<String> wrong = new ArrayList<>();
        table().forEach((route, allowed) -> {
            if (allowed.contains(ANYBODY) || allowed.contains(HALF)) {
                return;
            }
            for (Role role : Role.values()) {
                boolean may = allowed.contains(role.name());
                if (route.method().equals("GET") || !may) {
                    int status = ask(route, role, true);
                    if ((status == 403) == may) {
                        wrong.add(route + " as " + role + ": " + status);
                    }
                }
            }
            int stranger = ask(route, null, true);
            if (stranger != (route.path().startsWith("/field/") ? 401 : 302)) {
                wrong.add(route + " as a stranger: " + stranger);
            }
        });
        assertThat(wrong).isEmpty();
    }

    @Test
    @DisplayName("SEC-31 no writing route takes a request without the proof that it comes from our page")
    void sec31NeedsTheToken() throws IOException {
        List<Route> writing = table().keySet().stream()
                .filter(route -> !route.method().equals("GET") && !route.path().equals("/denied"))
                .toList();

        assertThat(writing).isNotEmpty();
        assertThat(writing)
                .allMatch(route -> Stream.of(Role.values()).allMatch(role -> ask(route, role, false) == 403));
    }

    @Test
    @DisplayName(
            "SEC-29 SEC-23 every page and file says what it is, text with its charset, and nobody may guess otherwise")
    void sec29EveryAnswerSaysWhatItIs() throws IOException {
        List<String> wrong = new ArrayList<>();
        table().forEach((route, allowed) -> {
            if (route.method().equals("GET")) {
                Role role = Stream.of(Role.values())
                        .filter(r -> allowed.contains(r.name()))
                        .findFirst()
                        .orElse(null);
                judge(route.path(), answer(route, role, true), wrong);
            }
        });
        for (Resource file : new PathMatchingResourcePatternResolver().getResources("classpath:/static/**/*.*")) {
            String path = file.getURL().getPath().replaceFirst(".*/static", "");
            MockHttpServletResponse answer = mvc.get().uri(path).exchange().getResponse();
            judge(path, answer, wrong);
            if (answer.getStatus() == 200
                    && !String.valueOf(answer.getContentType()).startsWith(typeOf(path.replaceFirst(".*\\.", "")))) {
                wrong.add(path + " is said to be " + answer.getContentType());
            }
        }
        assertThat(wrong).isEmpty();
    }

    private static void judge(String path, MockHttpServletResponse answer, List<String> wrong) {
        if (!"nosniff".equals(answer.getHeader("X-Content-Type-Options"))) {
            wrong.add(path + " may be sniffed");
        }
        String type = answer.getContentType();
        if (answer.getContentAsByteArray().length == 0) {
            return;
        }
        if (type == null) {
            wrong.add(path + " does not say what it is");
        } else if (type.startsWith("text/") && !type.toLowerCase(Locale.ROOT).contains("charset=utf-8")) {
            wrong.add(path + " has no charset: " + type);
        }
    }

    private static String typeOf(String ending) {
        return switch (ending) {
            case "css" -> "text/css";
            case "js" -> "text/javascript";
            case "svg" -> "image/svg+xml";
            case "png" -> "image/png";
            case "woff2" -> "font/woff2";
            case "json" -> "application/";
            case "html" -> "text/html";
            case "txt" -> "text/plain";
            default -> "unknown ending " + ending;
        };
    }

    @ParameterizedTest
    @ValueSource(strings = {"/field/session", "/field/bundle"})
    @DisplayName("SEC-23 what is meant for scripts stays JSON though a browser asks for a page")
    void sec23StaysJson(String path) {
        assertThat(mvc.get().uri(path).accept(MediaType.TEXT_HTML).with(user(somebody(Role.TECHNICIAN))))
                .satisfiesAnyOf(
                        answer -> assertThat(answer).hasStatus(406),
                        answer -> assertThat(answer).hasContentTypeCompatibleWith(MediaType.APPLICATION_JSON));
    }

    private static CurrentUser somebody(Role role) {
        return new CurrentUser(UUID.fromString(ID), UUID.fromString(ID), "matrix", "Matrix", Set.of(role), null);
    }

    private int ask(Route route, @Nullable Role role, boolean proof) {
        return answer(route, role, proof).getStatus();
    }

    private MockHttpServletResponse answer(Route route, @Nullable Role role, boolean proof) {
        String path = route.path().replaceAll("\\{[^/:}]+:([^|}]+)[^}]*}", "$1").replaceAll("\\{[^/}]+}", ID);
        var request = mvc.method(HttpMethod.valueOf(route.method())).uri(path);
        if (role != null) {
            request = request.with(user(somebody(role)));
        }
        if (proof) {
            request = request.with(csrf());
        }
        return request.exchange().getResponse();
    }

    private TreeMap<Route, Set<String>> declared() {
        TreeMap<Route, Set<String>> routes = empty();
        mapping.getHandlerMethods().forEach((info, handler) -> {
            if (!handler.getBeanType().getName().startsWith("app.ramkeeper.")) {
                return;
            }
            Set<RequestMethod> methods = info.getMethodsCondition().getMethods();
            for (String path : info.getPatternValues()) {
                for (String method : methods.isEmpty()
                        ? List.of("GET", "POST")
                        : methods.stream().map(Enum::name).toList()) {
                    routes.put(new Route(path, method), rule(handler));
                }
            }
        });
        return routes;
    }

    private static Set<String> rule(HandlerMethod handler) {
        PreAuthorize rule = AnnotatedElementUtils.findMergedAnnotation(handler.getMethod(), PreAuthorize.class);
        if (rule == null) {
            rule = AnnotatedElementUtils.findMergedAnnotation(handler.getBeanType(), PreAuthorize.class);
        }
        if (rule == null) {
            return Set.of("NOBODY");
        }
        if (rule.value().equals("permitAll")) {
            return Set.of(ANYBODY);
        }
        if (rule.value().contains("FACTOR_PASSWORD")) {
            return Set.of(HALF);
        }
        return Arrays.stream(Role.values())
                .map(Role::name)
                .filter(rule.value()::contains)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static TreeMap<Route, Set<String>> table() throws IOException {
        TreeMap<Route, Set<String>> routes = empty();
        new ClassPathResource("routes.csv")
                .getContentAsString(StandardCharsets.UTF_8)
                .lines()
                .filter(line -> !line.isBlank() && !line.startsWith("#"))
                .map(line -> line.split(",", -1))
                .forEach(cells -> routes.put(
                        new Route(cells[0].strip(), cells[1].strip()),
                        new TreeSet<>(Arrays.asList(cells[2].strip().split(" ")))));
        return routes;
    }

    private static TreeMap<Route, Set<String>> empty() {
        return new TreeMap<>((one, other) -> {
            int byPath = one.path().compareTo(other.path());
            return byPath != 0 ? byPath : one.method().compareTo(other.method());
        });
    }

    private static List<String> lines(TreeMap<Route, Set<String>> routes) {
        return routes.entrySet().stream()
                .map(entry -> entry.getKey().path() + "," + entry.getKey().method() + ","
                        + String.join(" ", entry.getValue()))
                .toList();
    }
}
