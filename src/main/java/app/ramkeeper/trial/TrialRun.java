package app.ramkeeper.trial;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Properties;
import org.springframework.boot.SpringApplication;

/** Prepares the trial run: its own database server under {@code data/}, reached with a password from this machine only. */
public final class TrialRun {

    private static final String SECURED = """
            # Written by the trial run: a password for every connection, from this machine only.
            host all all 127.0.0.1/32 scram-sha-256
            """;

    private TrialRun() {}

    /** Starts the server and points the application at it; ends the process with a sentence if it cannot. */
    public static void prepare(SpringApplication application, String[] arguments) {
        try {
            requireFreePort(port(arguments));
            TrialFolder folder = new TrialFolder(Path.of(System.getProperty("ramkeeper.trial.folder", "data")));
            folder.occupy();
            application.setDefaultProperties(start(folder));
        } catch (TrialRefused refused) {
            System.err.println();
            System.err.println(refused.getMessage());
            System.exit(1);
        } catch (IOException | SQLException | RuntimeException failure) {
            throw new IllegalStateException("The trial run's database could not be prepared", failure);
        }
    }

    private static Map<String, Object> start(TrialFolder folder) throws IOException, SQLException {
        LeftoverServer.clear(folder.database());
        Properties passwords = folder.passwords();
        String superuser = passwords.getProperty(EmbeddedServer.SUPERUSER);
        EmbeddedServer server = EmbeddedServer.durable(folder.database(), folder.programs(), superuser);
        // Runs after the application has closed its connections, on Ctrl-C too.
        SpringApplication.getShutdownHandlers().add(server::close);
        DatabaseRoles roles =
                new DatabaseRoles(passwords.getProperty(DatabaseRoles.OWNER), passwords.getProperty(DatabaseRoles.APP));
        try {
            secure(server, folder, superuser);
            roles.createOn(server.url("postgres"), EmbeddedServer.SUPERUSER, superuser);
        } catch (IOException | SQLException | RuntimeException failure) {
            server.close();
            throw failure;
        }
        Map<String, Object> settings = new LinkedHashMap<>();
        settings.put("spring.datasource.url", server.url(DatabaseRoles.DATABASE));
        settings.put("spring.datasource.username", DatabaseRoles.APP);
        settings.put("spring.datasource.password", roles.appPassword());
        settings.put("spring.flyway.user", DatabaseRoles.OWNER);
        settings.put("spring.flyway.password", roles.ownerPassword());
        settings.put("ramkeeper.app-role", DatabaseRoles.APP);
        settings.put("spring.profiles.active", "trial");
        settings.put("ramkeeper.trial.folder", folder.root().toString());
        return settings;
    }

    /** The library sets up a server that trusts everybody: gives the superuser a password and asks for it from then on. */
    private static void secure(EmbeddedServer server, TrialFolder folder, String password)
            throws IOException, SQLException {
        Path rules = folder.database().resolve("pg_hba.conf");
        if (!Files.readString(rules).equals(SECURED)) {
            try (Connection admin =
                            DriverManager.getConnection(server.url("postgres"), EmbeddedServer.SUPERUSER, password);
                    Statement statement = admin.createStatement()) {
                statement.execute("alter role " + EmbeddedServer.SUPERUSER + " password '" + password + "'");
                Files.writeString(rules, SECURED);
                statement.execute("select pg_reload_conf()");
            }
        }
        folder.passwordsAreSet();
    }

    private static int port(String[] arguments) {
        String port = System.getProperty("server.port", System.getenv().getOrDefault("SERVER_PORT", "8080"));
        for (String argument : arguments) {
            if (argument.startsWith("--server.port=")) {
                port = argument.substring("--server.port=".length());
            }
        }
        try {
            return Integer.parseInt(port);
        } catch (NumberFormatException wrong) {
            throw new TrialRefused("server.port must be a number; it is \"" + port + "\".");
        }
    }

    private static void requireFreePort(int port) throws IOException {
        try (ServerSocket probe = new ServerSocket()) {
            probe.setReuseAddress(true);
            probe.bind(new InetSocketAddress(InetAddress.getByName("127.0.0.1"), port));
        } catch (java.net.BindException taken) {
            throw new TrialRefused(
                    "Port " + port + " of this machine is taken by another program. Stop that program, or"
                            + " choose another port:\n  ./mvnw spring-boot:run -Dspring-boot.run.arguments=--server.port=8081");
        }
    }
}
