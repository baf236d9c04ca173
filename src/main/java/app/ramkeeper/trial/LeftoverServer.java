package app.ramkeeper.trial;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What a trial run that was killed may leave behind: its database server still running, or only that server's pid file. */
final class LeftoverServer {

    private static final Logger LOG = LoggerFactory.getLogger(LeftoverServer.class);

    private LeftoverServer() {}

    /** Stops the server if it still runs, and removes its pid file, which would keep the next one from starting. */
    static void clear(Path database) throws IOException {
        Path pidFile = database.resolve("postmaster.pid");
        if (!Files.exists(pidFile)) {
            return;
        }
        Optional<ProcessHandle> server = server(Files.readAllLines(pidFile));
        if (server.isPresent()) {
            LOG.info("Stopping the database server that an earlier trial run left behind");
            stop(server.get());
        }
        Files.deleteIfExists(pidFile);
    }

    /** The process named in the file, unless its number has since gone to another program. */
    private static Optional<ProcessHandle> server(List<String> pidFile) {
        try {
            long pid = Long.parseLong(pidFile.get(0).strip());
            Instant started =
                    Instant.ofEpochSecond(Long.parseLong(pidFile.get(2).strip()));
            return ProcessHandle.of(pid)
                    .filter(ProcessHandle::isAlive)
                    .filter(process -> process.info()
                            .startInstant()
                            .map(start -> Duration.between(start, started).abs().toSeconds() <= 30)
                            .orElse(false));
        } catch (NumberFormatException | IndexOutOfBoundsException torn) {
            return Optional.empty();
        }
    }

    private static void stop(ProcessHandle server) {
        server.destroy();
        try {
            server.onExit().get(30, TimeUnit.SECONDS);
        } catch (TimeoutException | ExecutionException stuck) {
            server.destroyForcibly();
            throw new TrialRefused("The database server of an earlier trial run (process " + server.pid()
                    + ") did not stop in time and was ended. Start the trial again.");
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
