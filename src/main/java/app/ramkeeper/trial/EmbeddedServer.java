package app.ramkeeper.trial;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Duration;
import org.springframework.boot.logging.LogLevel;
import org.springframework.boot.logging.LoggingSystem;

/**
 * A real Postgres 18 of this process's own, for the trial run and for tests on machines without a container engine.
 *
 * <p>The only class that knows the embedded library. Started by root, the library gives the server an unprivileged
 * user namespace, since Postgres refuses to run as root.
 */
public final class EmbeddedServer implements AutoCloseable {

    static final String SUPERUSER = "postgres";

    private final EmbeddedPostgres server;

    private EmbeddedServer(EmbeddedPostgres server) {
        this.server = server;
    }

    /**
     * Starts the server on a folder that is kept, with writes that survive a crash.
     *
     * @param folder the server's data
     * @param programs where the server's programs are unpacked
     * @param password the superuser's password, asked for once the folder is secured
     */
    static EmbeddedServer durable(Path folder, Path programs, String password) {
        return start(loopbackOnly(EmbeddedPostgres.builder())
                .setDataDirectory(folder.toAbsolutePath())
                .setCleanDataDirectory(false)
                .setRegisterShutdownHook(false)
                .setOverrideWorkingDirectory(programs.toAbsolutePath().toFile())
                .setPGStartupWait(Duration.ofMinutes(2))
                .setConnectConfig("password", password)
                .setServerConfig("max_connections", "60")
                // The library passes -F; a later setting wins. Commits of the trial survive a power cut.
                .setServerConfig("fsync", "on")
                .setServerConfig("synchronous_commit", "on")
                .setServerConfig("full_page_writes", "on"));
    }

    /** Starts a throw-away server for tests, which ends with this process. */
    public static EmbeddedServer forTests() {
        Path programs =
                Path.of(System.getProperty("java.io.tmpdir"), "ramkeeper-pg-" + System.getProperty("user.name"));
        return start(loopbackOnly(EmbeddedPostgres.builder())
                .setOverrideWorkingDirectory(programs.toFile())
                .setPGStartupWait(Duration.ofMinutes(1))
                .setServerConfig("fsync", "off")
                .setServerConfig("max_connections", "300"));
    }

    private static EmbeddedPostgres.Builder loopbackOnly(EmbeddedPostgres.Builder builder) {
        return builder.setServerConfig("listen_addresses", "127.0.0.1").setServerConfig("unix_socket_directories", "");
    }

    private static EmbeddedServer start(EmbeddedPostgres.Builder builder) {
        LoggingSystem.get(EmbeddedServer.class.getClassLoader()).setLogLevel("io.zonky", LogLevel.WARN);
        try {
            return new EmbeddedServer(builder.start());
        } catch (IOException failure) {
            throw new UncheckedIOException("The embedded Postgres did not start: " + failure.getMessage(), failure);
        }
    }

    /** The JDBC address of one of the server's databases, without user or password. */
    public String url(String database) {
        return "jdbc:postgresql://127.0.0.1:" + server.getPort() + "/" + database;
    }

    @Override
    public void close() {
        try {
            server.close();
        } catch (IOException failure) {
            throw new UncheckedIOException("The embedded Postgres did not stop cleanly", failure);
        }
    }
}
