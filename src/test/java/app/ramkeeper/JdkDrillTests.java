package app.ramkeeper;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.trial.DatabaseRoles;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Properties;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Starts the packaged jar on each Java from 17 to 25 that this machine has. */
class JdkDrillTests {

    static Stream<Path> installed() throws IOException {
        Path home = Path.of(System.getProperty("java.home"));
        Path all = Path.of("/usr/lib/jvm");
        Stream<Path> others =
                Files.isDirectory(all) ? Files.list(all).filter(path -> !Files.isSymbolicLink(path)) : Stream.of();
        return Stream.concat(Stream.of(home), others.filter(path -> !path.equals(home)))
                .filter(path -> Files.exists(path.resolve("bin/java")))
                .filter(path -> version(path) >= 17 && version(path) <= 25);
    }

    @ParameterizedTest
    @MethodSource("installed")
    void starts(Path java) throws Exception {
        try (InstalledApp installed = new InstalledApp()) {
            PackagedApp node = installed.node(java, DatabaseRoles.DATABASE).awaitUp();

            assertThat(node.output()).contains("using Java " + version(java));
            assertThat(node.get("/sign-in").statusCode()).isEqualTo(200);
        }
    }

    private static int version(Path java) {
        Properties release = new Properties();
        try (var reader = Files.newBufferedReader(java.resolve("release"))) {
            release.load(reader);
        } catch (IOException unreadable) {
            return 0;
        }
        String version = release.getProperty("JAVA_VERSION", "0").replace("\"", "");
        return Integer.parseInt(version.replaceFirst("[^0-9].*", ""));
    }
}
