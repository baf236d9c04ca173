package app.ramkeeper;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.awaitility.Awaitility;

/** A real Postgres 15 of the machine, as a child of the test, with durable settings: it can be crashed and restarted. */
public final class InstalledPostgres implements AutoCloseable {

    private static final String UNPRIVILEGED = "65534";

    private final Path programs;
    private final Path folder;
    private final int port;

    private InstalledPostgres(Path programs, Path folder, int port) {
        this.programs = programs;
        this.folder = folder;
        this.port = port;
    }

    /** Sets up and starts a server of its own. */
    public static InstalledPostgres start() {
        try (ServerSocket free = new ServerSocket(0)) {
            Path folder = Files.createTempDirectory("ramkeeper-pg15");
            InstalledPostgres server = new InstalledPostgres(Needs.postgres15(), folder, free.getLocalPort());
            free.close();
            if (root()) {
                run(List.of("chown", UNPRIVILEGED, folder.toString()));
            }
            server.unprivileged(
                    "initdb",
                    "-U",
                    "postgres",
                    "-A",
                    "trust",
                    "-E",
                    "UTF8",
                    "--locale=C.UTF-8",
                    "-k",
                    "-D",
                    server.data());
            server.up();
            return server;
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    public String url(String database) {
        return "jdbc:postgresql://127.0.0.1:" + port + "/" + database;
    }

    public int port() {
        return port;
    }

    public String user() {
        return "postgres";
    }

    /** The folder of the server's own programs, pg_dump among them. */
    public Path programs() {
        return programs;
    }

    /** Starts the server, again and again while children of a crashed one still hold its memory. */
    public void up() {
        Awaitility.await().atMost(Duration.ofSeconds(30)).ignoreExceptions().until(() -> {
            unprivileged(
                    "pg_ctl",
                    "-D",
                    data(),
                    "-w",
                    "-l",
                    folder.resolve("log").toString(),
                    "-o",
                    "-p " + port + " -c listen_addresses=127.0.0.1 -c unix_socket_directories= -c max_connections=200",
                    "start");
            return true;
        });
        Awaitility.await().atMost(Duration.ofSeconds(30)).until(this::answers);
    }

    /** Stops it as a restart by an administrator would: sessions are cut. */
    public void down() {
        unprivileged("pg_ctl", "-D", data(), "-m", "fast", "-w", "stop");
    }

    /** Kills the server's first process without warning. */
    public void crash() {
        try {
            long pid = Long.parseLong(
                    Files.readAllLines(Path.of(data(), "postmaster.pid")).get(0));
            ProcessHandle.of(pid).orElseThrow().destroyForcibly();
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    private boolean answers() {
        try {
            DriverManager.getConnection(url("postgres"), user(), "").close();
            return true;
        } catch (SQLException notYet) {
            return false;
        }
    }

    private String data() {
        return folder.resolve("data").toString();
    }

    private void unprivileged(String program, String... arguments) {
        List<String> command = new ArrayList<>();
        if (root()) {
            command.addAll(List.of("setpriv", "--reuid=" + UNPRIVILEGED, "--regid=" + UNPRIVILEGED, "--clear-groups"));
        }
        command.add(programs.resolve(program).toString());
        command.addAll(List.of(arguments));
        run(command);
    }

    private static void run(List<String> command) {
        try {
            Path output = Files.createTempFile("ramkeeper", ".out");
            Process process = new ProcessBuilder(command)
                    .directory(Path.of("/").toFile())
                    .redirectErrorStream(true)
                    .redirectOutput(output.toFile())
                    .start();
            if (process.waitFor() != 0) {
                throw new IllegalStateException(command + " failed: " + Files.readString(output));
            }
            Files.delete(output);
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(interrupted);
        }
    }

    private static boolean root() {
        return "root".equals(System.getProperty("user.name"));
    }

    @Override
    public void close() {
        unprivileged("pg_ctl", "-D", data(), "-m", "immediate", "-w", "stop");
        if (root()) {
            run(List.of("rm", "-rf", folder.toString()));
        }
    }
}
