package app.ramkeeper.trial;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;

/**
 * The database and its two roles: the owner migrates, the application works with rows only.
 *
 * <p>Only so does the audit trail hold against the application itself: its role may not rewrite what it did.
 */
public record DatabaseRoles(String ownerPassword, String appPassword) {

    public static final String DATABASE = "ramkeeper";
    public static final String OWNER = "ramkeeper_owner";
    public static final String APP = "ramkeeper_app";

    /** Creates what is missing and sets both passwords; safe to repeat. */
    public void createOn(String adminUrl, String adminUser, String adminPassword) throws SQLException {
        try (Connection admin = DriverManager.getConnection(adminUrl, adminUser, adminPassword)) {
            role(admin, OWNER, ownerPassword);
            role(admin, APP, appPassword);
            if (!exists(admin, "select 1 from pg_database where datname = ?", DATABASE)) {
                execute(admin, "create database " + DATABASE + " owner " + OWNER);
            }
        }
    }

    private static void role(Connection admin, String name, String password) throws SQLException {
        if (!exists(admin, "select 1 from pg_roles where rolname = ?", name)) {
            execute(admin, "create role " + name + " login");
        }
        if (!password.matches("[A-Za-z0-9_-]+")) {
            throw new IllegalArgumentException("A database password made here has letters, digits, - and _ only");
        }
        execute(admin, "alter role " + name + " password '" + password + "'");
    }

    private static boolean exists(Connection admin, String query, String name) throws SQLException {
        try (PreparedStatement statement = admin.prepareStatement(query)) {
            statement.setString(1, name);
            return statement.executeQuery().next();
        }
    }

    private static void execute(Connection admin, String sql) throws SQLException {
        try (Statement statement = admin.createStatement()) {
            statement.execute(sql);
        }
    }
}
