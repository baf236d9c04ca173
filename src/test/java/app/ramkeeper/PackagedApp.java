package app.ramkeeper;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.awaitility.Awaitility;

/** The packaged jar, run as a process of its own, the way it is run for real. */
public final class PackagedApp implements AutoCloseable {

    private final Process process;
    private final Path output;
    private final int port;

    private PackagedApp(Process process, Path output, int port) {
        this.process = process;
        this.output = output;
        this.port = port;
    }

    /** The jar that this build made. */
    public static Path jar() {
        try (var files = Files.list(Path.of("target"))) {
            return files.filter(file -> file.getFileName().toString().matches("ramkeeper-[0-9].*\\.jar"))
                    .filter(file -> !file.toString().endsWith("-sizing.jar"))
                    .findFirst()
                    .orElseThrow(
                            () -> new IllegalStateException("No packaged jar in target: run ./mvnw package first"));
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    /** Starts the jar on this build's own Java. */
    public static PackagedApp launch(Map<String, String> environment, String... arguments) {
        return launch(Path.of(System.getProperty("java.home")), environment, arguments);
    }

    /** Starts the jar on a given Java; does not wait for it. */
    public static PackagedApp launch(Path java, Map<String, String> environment, String... arguments) {
        try (ServerSocket free = new ServerSocket(0)) {
            int port = free.getLocalPort();
            Path output = Files.createTempFile(Path.of("target"), "app", ".log");
            List<String> command = new ArrayList<>();
            command.add(java.resolve("bin/java").toString());
            List.of(arguments).stream()
                    .filter(argument -> argument.startsWith("-X"))
                    .forEach(command::add);
            command.addAll(List.of("-jar", jar().toString(), "--server.port=" + port));
            List.of(arguments).stream()
                    .filter(argument -> !argument.startsWith("-X"))
                    .forEach(command::add);
            ProcessBuilder builder =
                    new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(output.toFile());
            builder.environment()
                    .keySet()
                    .removeIf(name -> name.startsWith("SPRING_") || name.startsWith("RAMKEEPER_"));
            builder.environment().putAll(environment);
            free.close();
            return new PackagedApp(builder.start(), output, port);
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    /** The settings of a real installation: the owner migrates, the application's role works. */
    public static Map<String, String> settings(
            String url, String owner, String ownerPassword, String app, String appPassword) {
        Map<String, String> settings = new HashMap<>();
        settings.put("SPRING_DATASOURCE_URL", url);
        settings.put("SPRING_DATASOURCE_USERNAME", app);
        settings.put("SPRING_DATASOURCE_PASSWORD", appPassword);
        settings.put("SPRING_FLYWAY_USER", owner);
        settings.put("SPRING_FLYWAY_PASSWORD", ownerPassword);
        settings.put("RAMKEEPER_APP_ROLE", app);
        return settings;
    }

    public PackagedApp awaitUp() {
        Awaitility.await().atMost(Duration.ofMinutes(2)).until(() -> {
            if (!process.isAlive()) {
                throw new IllegalStateException("The application ended:\n" + output());
            }
            return up();
        });
        return this;
    }

    public boolean up() {
        try {
            return get("/actuator/health").statusCode() == 200;
        } catch (RuntimeException notYet) {
            return false;
        }
    }

    public HttpResponse<String> get(String path) {
        HttpRequest request = HttpRequest.newBuilder(uri(path))
                .timeout(Duration.ofSeconds(40))
                .build();
        try {
            return HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofString());
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(interrupted);
        }
    }

    /** Sends bytes as they are and reads until the connection closes, or is silent for two seconds. */
    public String raw(String request) {
        StringBuilder answer = new StringBuilder();
        try (Socket socket = new Socket("127.0.0.1", port)) {
            socket.setSoTimeout(2000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
            byte[] buffer = new byte[8192];
            for (int read = socket.getInputStream().read(buffer);
                    read > 0;
                    read = socket.getInputStream().read(buffer)) {
                answer.append(new String(buffer, 0, read, StandardCharsets.ISO_8859_1));
            }
        } catch (IOException silentOrClosed) {
            return answer.toString();
        }
        return answer.toString();
    }

    public URI uri(String path) {
        return URI.create("http://localhost:" + port + path);
    }

    public int port() {
        return port;
    }

    public ProcessHandle handle() {
        return process.toHandle();
    }

    public String output() {
        try {
            return Files.readString(output);
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    /** Waits for the process to end by itself. */
    public int exitCode() {
        try {
            if (!process.waitFor(2, TimeUnit.MINUTES)) {
                throw new IllegalStateException("The application is still running:\n" + output());
            }
            return process.exitValue();
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(interrupted);
        }
    }

    public void kill() {
        process.destroyForcibly();
        exitCode();
    }

    /** Asks it to stop and does not wait. */
    public void stop() {
        process.destroy();
    }

    @Override
    public void close() {
        process.destroy();
        exitCode();
    }
}
