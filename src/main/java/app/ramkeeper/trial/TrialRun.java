package app.ramkeeper.trial;

import java.nio.file.Path;
import java.util.Map;
import org.springframework.boot.SpringApplication;

/** Prepares the trial run: its own database server under {@code data/}. */
public final class TrialRun {

    private TrialRun() {}

    /** Starts the server and points the application at it. */
    public static void prepare(SpringApplication application) {
        EmbeddedServer server = EmbeddedServer.durable(Path.of("data", "postgres"));
        application.setDefaultProperties(Map.of(
                "spring.datasource.url", server.url(),
                "spring.datasource.username", "postgres",
                "spring.profiles.active", "trial"));
    }
}
