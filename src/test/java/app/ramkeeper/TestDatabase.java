package app.ramkeeper;

import app.ramkeeper.trial.EmbeddedServer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.postgresql.PostgreSQLContainer;

/**
 * The one Postgres of a test run: a container where an engine answers and can pull, else the embedded server of the
 * trial run. The log says which.
 */
@TestConfiguration(proxyBeanMethods = false)
public class TestDatabase {

    private static final Logger LOG = LoggerFactory.getLogger(TestDatabase.class);

    @Bean
    JdbcConnectionDetails testDatabase() {
        return Running.DETAILS;
    }

    /** Address and user of the server, for tests that need a connection of their own. */
    public static JdbcConnectionDetails details() {
        return Running.DETAILS;
    }

    private record Details(String getJdbcUrl, String getUsername, String getPassword)
            implements JdbcConnectionDetails {}

    private static final class Running {
        static final JdbcConnectionDetails DETAILS = start();

        private static JdbcConnectionDetails start() {
            if (DockerClientFactory.instance().isDockerAvailable()) {
                try {
                    PostgreSQLContainer container = new PostgreSQLContainer("postgres:18");
                    container.start();
                    LOG.info("Tests run on Postgres in a container");
                    return new Details(container.getJdbcUrl(), container.getUsername(), container.getPassword());
                } catch (RuntimeException unable) {
                    LOG.warn("A container engine answers but cannot run Postgres: {}", unable.getMessage());
                }
            }
            EmbeddedServer server = EmbeddedServer.forTests();
            LOG.info("Tests run on the embedded Postgres: no container engine");
            return new Details(server.url(), "postgres", "");
        }
    }
}
