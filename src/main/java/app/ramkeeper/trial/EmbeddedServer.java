package app.ramkeeper.trial;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;

/** A real Postgres 18 of this process's own, for the trial run and for tests on machines without a container engine. */
public final class EmbeddedServer implements AutoCloseable {

    private final EmbeddedPostgres server;

    private EmbeddedServer(EmbeddedPostgres server) {
        this.server = server;
    }

    /** Starts the server on a folder that is kept, with writes that survive a crash. */
    public static EmbeddedServer durable(Path folder) {
        return start(EmbeddedPostgres.builder()
                .setDataDirectory(folder)
                .setCleanDataDirectory(false)
                .setServerConfig("fsync", "on")
                .setServerConfig("synchronous_commit", "on")
                .setServerConfig("full_page_writes", "on")
                .setServerConfig("listen_addresses", "127.0.0.1"));
    }

    /** Starts a throw-away server for tests. */
    public static EmbeddedServer forTests() {
        return start(EmbeddedPostgres.builder()
                .setServerConfig("fsync", "off")
                .setServerConfig("max_connections", "200")
                .setServerConfig("listen_addresses", "127.0.0.1"));
    }

    private static EmbeddedServer start(EmbeddedPostgres.Builder builder) {
        try {
            return new EmbeddedServer(builder.start());
        } catch (IOException failure) {
            throw new UncheckedIOException("The embedded Postgres did not start: " + failure.getMessage(), failure);
        }
    }

    /** The JDBC address of the server's own database. */
    public String url() {
        return server.getJdbcUrl("postgres", "postgres");
    }

    @Override
    public void close() throws IOException {
        server.close();
    }
}
