package app.ramkeeper;

import static app.ramkeeper.InstalledApp.ask;
import static app.ramkeeper.InstalledApp.run;
import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.shared.Uuids;
import app.ramkeeper.trial.DatabaseRoles;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.UUID;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Backs up a running installation with ops/backup, restores it with ops/restore, and works on the copy. */
class RestoreDrillTests {

    @TempDir
    Path folder;

    @Test
    @DisplayName("FLT-15 a restored copy equals the original and people can sign in to it")
    void flt15RestoresAnEqualCopy() throws Exception {
        try (InstalledApp installed = new InstalledApp()) {
            installed.node(DatabaseRoles.DATABASE).awaitUp();
            installed.addAccount(DatabaseRoles.DATABASE);
            try (Connection original = installed.admin(DatabaseRoles.DATABASE)) {
                fill(original);
            }

            String backup =
                    script(installed, 0, "ops/backup", folder.toString()).strip();
            script(installed, 0, "ops/restore", backup, "copy");

            try (Connection original = installed.admin(DatabaseRoles.DATABASE);
                    Connection copy = installed.admin("copy")) {
                assertThat(fingerprint(copy)).hasSizeGreaterThan(40).isEqualTo(fingerprint(original));
                assertThat(sequences(copy)).isNotEmpty().isEqualTo(sequences(original));
                assertThat(ask(copy, "select count(*) from files where sha256(content) = sha256"))
                        .isEqualTo("5");
            }
            PackagedApp onCopy = installed.node("copy").awaitUp();
            Visitor visitor = new Visitor(onCopy);
            assertThat(visitor.signIn(InstalledApp.LOGIN, InstalledApp.PASSWORD).statusCode())
                    .isEqualTo(302);
            assertThat(visitor.get("/").statusCode()).isLessThan(300);
        }
    }

    @Test
    void refusesADamagedBackupAndAnExistingDatabase() throws Exception {
        try (InstalledApp installed = new InstalledApp()) {
            installed.node(DatabaseRoles.DATABASE).awaitUp();
            String backup =
                    script(installed, 0, "ops/backup", folder.toString()).strip();

            assertThat(script(installed, 1, "ops/restore", backup, DatabaseRoles.DATABASE))
                    .contains("already exists");

            byte[] bytes = Files.readAllBytes(Path.of(backup));
            bytes[bytes.length / 2] ^= 1;
            Files.write(Path.of(backup), bytes);
            assertThat(script(installed, 65, "ops/restore", backup, "copy")).contains("damaged");
        }
    }

    private static void fill(Connection connection) throws Exception {
        Random random = new Random(7);
        for (int i = 0; i < 300; i++) {
            UUID site = Uuids.next();
            run(
                    connection,
                    "insert into customers (id, name) values (?, ?)",
                    Uuids.next(),
                    "Kāpene Ōrākei " + i + " – \\N 'x'");
            run(
                    connection,
                    "insert into sites (id, name, latitude, longitude) values (?, ?, ?, ?)",
                    site,
                    "Site " + i,
                    -45.0,
                    169.1);
            run(
                    connection,
                    "insert into installs (id, site_id, name) values (?, ?, ?)",
                    Uuids.next(),
                    site,
                    "Ram " + i);
        }
        for (int i = 0; i < 5; i++) {
            byte[] content = new byte[200_000];
            random.nextBytes(content);
            run(
                    connection,
                    "insert into files (sha256, media_type, size, content, created_at) values (?, 'image/png', ?, ?, now())",
                    MessageDigest.getInstance("SHA-256").digest(content),
                    content.length,
                    content);
        }
    }

    /** A hash of all rows of each table, in an order of their own. */
    private static Map<String, String> fingerprint(Connection connection) throws SQLException {
        Map<String, String> hashes = new TreeMap<>();
        for (String table : names(connection, "select tablename from pg_tables where schemaname = 'public'")) {
            // Sessions come and go by themselves.
            if (!table.startsWith("spring_session") && !table.equals("scheduled_tasks")) {
                hashes.put(
                        table,
                        ask(
                                connection,
                                "select count(*) || ' ' || coalesce(md5(string_agg(md5(t::text), '' order by md5(t::text))), '') from "
                                        + table + " t"));
            }
        }
        return hashes;
    }

    private static List<String> sequences(Connection connection) throws SQLException {
        return names(connection, "select sequencename || ' ' || coalesce(last_value, 0) from pg_sequences order by 1");
    }

    private static List<String> names(Connection connection, String sql) throws SQLException {
        List<String> names = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                var rows = statement.executeQuery(sql)) {
            while (rows.next()) {
                names.add(rows.getString(1));
            }
        }
        return names;
    }

    private static String script(InstalledApp installed, int expected, String... command)
            throws IOException, InterruptedException {
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment()
                .putAll(Map.of(
                        "PG_BIN", installed.server().programs().toString(),
                        "PGHOST", "127.0.0.1",
                        "PGPORT", String.valueOf(installed.server().port()),
                        "PGUSER", installed.server().user(),
                        "PGDATABASE", DatabaseRoles.DATABASE));
        Process process = builder.start();
        String output = new String(process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        assertThat(process.waitFor())
                .as(Arrays.toString(command) + "\n" + output)
                .isEqualTo(expected);
        return output;
    }
}
