package app.ramkeeper;

import static app.ramkeeper.InstalledApp.ask;
import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.trial.DatabaseRoles;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Breaks the database under a running installation and looks what people see and what is kept. */
class FaultDrillTests {

    @TempDir
    Path folder;

    @Test
    @DisplayName(
            "FLT-01 after a crash of the database what was confirmed is there, and the application recovers by itself")
    void flt01RecoversFromACrash() throws Exception {
        try (InstalledApp installed = new InstalledApp()) {
            PackagedApp node = installed.node(DatabaseRoles.DATABASE).awaitUp();
            installed.addAccount(DatabaseRoles.DATABASE);
            Visitor visitor = new Visitor(node);
            assertThat(visitor.signIn(InstalledApp.LOGIN, InstalledApp.PASSWORD).statusCode())
                    .isEqualTo(302);
            try (Connection connection = installed.admin(DatabaseRoles.DATABASE)) {
                assertThat(ask(
                                connection,
                                "select string_agg(setting, ' ' order by name) from pg_settings"
                                        + " where name in ('fsync', 'full_page_writes', 'synchronous_commit')"))
                        .isEqualTo("on on on");
            }

            installed.server().crash();
            Awaitility.await().atMost(Duration.ofSeconds(60)).until(() -> !node.up());
            assertThat(node.get("/actuator/health/liveness").statusCode()).isEqualTo(200);
            installed.server().up();

            Awaitility.await().atMost(Duration.ofSeconds(30)).until(node::up);
            // The session was confirmed before the crash: nobody has to sign in again.
            assertThat(visitor.get("/").statusCode()).isEqualTo(200);
        }
    }

    @Test
    @DisplayName("FLT-02 and FLT-03 cut connections and a restart cost no wrong answer and no sign-in")
    void flt02flt03SurvivesCutConnections() throws Exception {
        try (InstalledApp installed = new InstalledApp()) {
            PackagedApp node = installed.node(DatabaseRoles.DATABASE).awaitUp();
            Visitor visitor = signedIn(installed, node);
            try (Connection admin = installed.admin("postgres");
                    Statement statement = admin.createStatement()) {
                statement.execute("select pg_terminate_backend(pid) from pg_stat_activity where datname = 'ramkeeper'");
            }
            List<Integer> answers = new ArrayList<>();
            for (int i = 0; i < 10; i++) {
                answers.add(visitor.get("/").statusCode());
            }
            assertThat(answers)
                    .allMatch(status -> status == 200 || status == 503)
                    .endsWith(200);

            installed.server().down();
            HttpResponse<String> during = visitor.get("/");
            assertThat(during.statusCode()).isEqualTo(503);
            assertThat(during.headers().firstValue("Retry-After")).isPresent();
            installed.server().up();

            Awaitility.await()
                    .atMost(Duration.ofSeconds(30))
                    .until(() -> visitor.get("/").statusCode() == 200);
        }
    }

    @Test
    @DisplayName("FLT-06 with every connection held the next request ends in 503 in time, and all comes back")
    void flt06PoolExhausted() throws Exception {
        try (InstalledApp installed = new InstalledApp()) {
            PackagedApp node = installed
                    .node(
                            DatabaseRoles.DATABASE,
                            "--spring.datasource.hikari.maximum-pool-size=5",
                            "--spring.datasource.hikari.connection-timeout=2000")
                    .awaitUp();
            Visitor visitor = signedIn(installed, node);
            try (Connection blocker = locked(installed)) {
                List<CompletableFuture<Integer>> held = new ArrayList<>();
                for (int i = 0; i < 8; i++) {
                    held.add(
                            CompletableFuture.supplyAsync(() -> visitor.get("/").statusCode()));
                }
                assertThat(node.get("/actuator/health/liveness").statusCode()).isEqualTo(200);
                for (CompletableFuture<Integer> answer : held) {
                    assertThat(answer.get(30, TimeUnit.SECONDS)).isEqualTo(503);
                }
                blocker.rollback();
            }
            for (int i = 0; i < 8; i++) {
                assertThat(visitor.get("/").statusCode()).isEqualTo(200);
            }
            try (Connection admin = installed.admin("postgres")) {
                assertThat(
                                ask(
                                        admin,
                                        "select count(*) from pg_stat_activity where datname = 'ramkeeper' and state <> 'idle'"))
                        .isEqualTo("0");
            }
        }
    }

    @Test
    @DisplayName("FLT-13 of two nodes that start at once on an empty database one migrates, and both serve")
    void flt13TwoNodesMigrate() throws Exception {
        try (InstalledApp installed = new InstalledApp()) {
            PackagedApp one = installed.node(DatabaseRoles.DATABASE);
            PackagedApp other = installed.node(DatabaseRoles.DATABASE);

            assertThat(one.awaitUp().get("/sign-in").statusCode()).isEqualTo(200);
            assertThat(other.awaitUp().get("/sign-in").statusCode()).isEqualTo(200);

            try (Connection admin = installed.admin(DatabaseRoles.DATABASE)) {
                assertThat(ask(admin, "select count(*) - count(distinct script) from flyway_schema_history"))
                        .isEqualTo("0");
                assertThat(ask(admin, "select count(*) from flyway_schema_history where not success"))
                        .isEqualTo("0");
            }
        }
    }

    @Test
    @DisplayName("FLT-16 a node that is told to stop ends the request in hand, refuses new ones and exits by itself")
    void flt16StopsGracefully() throws Exception {
        try (InstalledApp installed = new InstalledApp()) {
            PackagedApp node = installed.node(DatabaseRoles.DATABASE).awaitUp();
            Visitor visitor = signedIn(installed, node);
            try (Connection blocker = locked(installed)) {
                CompletableFuture<Integer> inHand =
                        CompletableFuture.supplyAsync(() -> visitor.get("/").statusCode());
                Awaitility.await().until(() -> waiting(installed) > 0);

                node.stop();
                Awaitility.await().atMost(Duration.ofSeconds(10)).until(() -> !node.up());
                blocker.rollback();

                assertThat(inHand.get(15, TimeUnit.SECONDS)).isEqualTo(200);
            }
            assertThat(node.exitCode()).as("128 + SIGTERM").isEqualTo(143);
        }
    }

    private static Visitor signedIn(InstalledApp installed, PackagedApp node) throws Exception {
        installed.addAccount(DatabaseRoles.DATABASE);
        Visitor visitor = new Visitor(node);
        visitor.signIn(InstalledApp.LOGIN, InstalledApp.PASSWORD);
        return visitor;
    }

    /** Holds the tasks, which every first page asks, until it is rolled back. */
    private static Connection locked(InstalledApp installed) throws Exception {
        Connection blocker = installed.admin(DatabaseRoles.DATABASE);
        blocker.setAutoCommit(false);
        try (Statement statement = blocker.createStatement()) {
            statement.execute("lock table service_tasks in access exclusive mode");
        }
        return blocker;
    }

    private static int waiting(InstalledApp installed) throws Exception {
        try (Connection admin = installed.admin("postgres")) {
            return Integer.parseInt(ask(
                    admin,
                    "select count(*) from pg_stat_activity where datname = 'ramkeeper' and wait_event_type = 'Lock'"));
        }
    }

    @Test
    @DisplayName("FLT-07 SEC-80 a locked table ends in 503 in time, other pages still answer, nothing stays stuck")
    void flt07LockedTable() throws Exception {
        try (InstalledApp installed = new InstalledApp()) {
            PackagedApp node = installed.node(DatabaseRoles.DATABASE).awaitUp();
            Visitor visitor = signedIn(installed, node);
            try (Connection blocker = locked(installed)) {

                CompletableFuture<Integer> locked =
                        CompletableFuture.supplyAsync(() -> visitor.get("/").statusCode());
                assertThat(node.get("/sign-in").statusCode()).isEqualTo(200);
                assertThat(locked.get(15, TimeUnit.SECONDS)).isEqualTo(503);
                blocker.rollback();
            }
            assertThat(visitor.get("/").statusCode()).isEqualTo(200);
        }
    }

    @Test
    @DisplayName("FLT-12 a migration that fails is rolled back as a whole and the process says so")
    void flt12FailedMigration() throws Exception {
        Path script = folder.resolve("V9999__drill_break_half_way.sql");
        String locations = "--spring.flyway.locations=classpath:db/migration,filesystem:" + folder;
        try (InstalledApp installed = new InstalledApp()) {
            Files.writeString(script, "create table half_way (id int);\ninsert into no_such_table values (1);\n");
            PackagedApp broken = installed.node(DatabaseRoles.DATABASE, locations);
            assertThat(broken.exitCode()).isEqualTo(1);
            assertThat(broken.output()).contains("V9999__drill_break_half_way.sql", "no_such_table");
            try (Connection admin = installed.admin(DatabaseRoles.DATABASE)) {
                assertThat(ask(admin, "select to_regclass('half_way')")).isEqualTo("null");
                assertThat(ask(admin, "select count(*) from flyway_schema_history where version = '9999'"))
                        .isEqualTo("0");
            }

            installed.node(DatabaseRoles.DATABASE).awaitUp().close();

            Files.writeString(script, "create table half_way (id int);\n");
            installed.node(DatabaseRoles.DATABASE, locations).awaitUp();
            try (Connection admin = installed.admin(DatabaseRoles.DATABASE)) {
                assertThat(ask(admin, "select to_regclass('half_way')")).isEqualTo("half_way");
            }
        }
    }
}
