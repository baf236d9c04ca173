package app.ramkeeper;

import app.ramkeeper.shared.Uuids;
import app.ramkeeper.trial.DatabaseRoles;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;

/** A real installation for drills: the machine's Postgres 15, both roles, and the packaged jar on it. */
public final class InstalledApp implements AutoCloseable {

    public static final String LOGIN = "drill";
    public static final String PASSWORD = "a long enough sentence";
    private static final DatabaseRoles ROLES = new DatabaseRoles("owner-of-drills", "app-of-drills");

    private final InstalledPostgres server;
    private final List<PackagedApp> nodes = new ArrayList<>();

    public InstalledApp() throws SQLException {
        server = InstalledPostgres.start();
        ROLES.createOn(server.url("postgres"), server.user(), "");
    }

    public InstalledPostgres server() {
        return server;
    }

    /** Starts a node on one of the server's databases; a password alone is enough in drills. */
    public PackagedApp node(String database, String... arguments) {
        return node(java.nio.file.Path.of(System.getProperty("java.home")), database, arguments);
    }

    public PackagedApp node(java.nio.file.Path java, String database, String... arguments) {
        Map<String, String> settings = PackagedApp.settings(
                server.url(database),
                DatabaseRoles.OWNER,
                ROLES.ownerPassword(),
                DatabaseRoles.APP,
                ROLES.appPassword());
        settings.put("RAMKEEPER_SECOND_FACTOR", "off");
        PackagedApp node = PackagedApp.launch(java, settings, arguments);
        nodes.add(node);
        return node;
    }

    /** Somebody who may sign in to everything. */
    public void addAccount(String database) throws SQLException {
        UUID person = Uuids.next();
        UUID account = Uuids.next();
        String hash = "{argon2id}" + new Argon2PasswordEncoder(16, 32, 1, 19456, 2).encode(PASSWORD);
        try (Connection connection = admin(database)) {
            run(connection, "insert into people (id, name) values (?, 'Drill Sergeant')", person);
            run(
                    connection,
                    "insert into accounts (id, person_id, login, password_hash) values (?, ?, ?, ?)",
                    account,
                    person,
                    LOGIN,
                    hash);
            for (String role : List.of("OFFICE", "TECHNICIAN", "MANAGER", "ADMINISTRATOR")) {
                run(connection, "insert into account_roles (account_id, role) values (?, ?)", account, role);
            }
        }
    }

    public Connection admin(String database) throws SQLException {
        return DriverManager.getConnection(server.url(database), server.user(), "");
    }

    public static void run(Connection connection, String sql, Object... values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
            statement.execute();
        }
    }

    public static String ask(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement();
                var rows = statement.executeQuery(sql)) {
            return rows.next() ? String.valueOf(rows.getString(1)) : "nothing";
        }
    }

    @Override
    public void close() {
        nodes.forEach(PackagedApp::close);
        server.close();
    }
}
