package app.ramkeeper;

import app.ramkeeper.trial.DatabaseRoles;
import app.ramkeeper.trial.EmbeddedServer;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.core.env.Environment;
import org.springframework.test.context.DynamicPropertyRegistrar;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.postgresql.PostgreSQLContainer;

/**
 * The one Postgres of a test run: a container where an engine answers and can pull, else the embedded server of the
 * trial run. The log says which.
 *
 * <p>As in a real installation the owner migrates and the application works as a role that may not rewrite the audit.
 */
@TestConfiguration(proxyBeanMethods = false)
public class TestDatabase {

    private static final Logger LOG = LoggerFactory.getLogger(TestDatabase.class);

    @Bean
    JdbcConnectionDetails testDatabase(Environment environment) {
        return new Details(url(environment), DatabaseRoles.APP, Running.APP);
    }

    @Bean
    FlywayConnectionDetails testMigrations(Environment environment) {
        return new Migrations(url(environment), DatabaseRoles.OWNER, Running.OWNER);
    }

    /** The database that all tests share, or an empty one of the name that {@code test.database} gives. */
    private static String url(Environment environment) {
        String name = environment.getProperty("test.database", DatabaseRoles.DATABASE);
        if (!name.equals(DatabaseRoles.DATABASE) && Running.MADE.add(name)) {
            try (Connection admin = DriverManager.getConnection(
                            Running.SERVER.url("postgres"), Running.SERVER.user(), Running.SERVER.password());
                    Statement statement = admin.createStatement()) {
                statement.execute("create database " + name + " owner " + DatabaseRoles.OWNER);
            } catch (SQLException failure) {
                throw new IllegalStateException("A database of its own could not be made", failure);
            }
        }
        return Running.SERVER.url(name);
    }

    @Bean
    DynamicPropertyRegistrar applicationRole() {
        return registry -> registry.add("ramkeeper.app-role", () -> DatabaseRoles.APP);
    }

    /** Address and user of the application's role, for tests that need a connection of their own. */
    public static JdbcConnectionDetails details() {
        return new Details(Running.SERVER.url(DatabaseRoles.DATABASE), DatabaseRoles.APP, Running.APP);
    }

    /** The role that owns the tables and migrates them. */
    public static JdbcConnectionDetails owner() {
        return new Details(Running.SERVER.url(DatabaseRoles.DATABASE), DatabaseRoles.OWNER, Running.OWNER);
    }

    /** The server's superuser, for tests that make databases or end connections. */
    public static JdbcConnectionDetails superuser() {
        return new Details(Running.SERVER.url("postgres"), Running.SERVER.user(), Running.SERVER.password());
    }

    private record Details(String getJdbcUrl, String getUsername, String getPassword)
            implements JdbcConnectionDetails {}

    private record Migrations(String getJdbcUrl, String getUsername, String getPassword)
            implements FlywayConnectionDetails {}

    private record Server(String address, String user, String password) {
        String url(String database) {
            return address + database;
        }
    }

    private static final class Running {
        static final String OWNER = "owner-in-tests";
        static final String APP = "app-in-tests";
        static final Server SERVER = start();
        static final Set<String> MADE = ConcurrentHashMap.newKeySet();

        private static Server start() {
            Server server = server();
            try {
                new DatabaseRoles(OWNER, APP).createOn(server.url("postgres"), server.user(), server.password());
            } catch (SQLException failure) {
                throw new IllegalStateException("The test database could not be prepared", failure);
            }
            return server;
        }

        private static Server server() {
            if (DockerClientFactory.instance().isDockerAvailable()) {
                try {
                    PostgreSQLContainer container = new PostgreSQLContainer("postgres:18").withDatabaseName("postgres");
                    container.start();
                    LOG.info("Tests run on Postgres in a container");
                    String address =
                            "jdbc:postgresql://" + container.getHost() + ":" + container.getMappedPort(5432) + "/";
                    return new Server(address, container.getUsername(), container.getPassword());
                } catch (RuntimeException unable) {
                    LOG.warn("A container engine answers but cannot run Postgres: {}", unable.getMessage());
                }
            }
            EmbeddedServer server = EmbeddedServer.forTests();
            LOG.info("Tests run on the embedded Postgres: no container engine");
            return new Server(server.url(""), "postgres", "");
        }
    }
}
