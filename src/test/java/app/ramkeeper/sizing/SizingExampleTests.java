package app.ramkeeper.sizing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Compiles and runs the example of the README as it stands there. */
class SizingExampleTests {

    private static final String IMPORTS = """
            import app.ramkeeper.sizing.line.*;
            import app.ramkeeper.sizing.pipe.*;
            import app.ramkeeper.sizing.quantity.*;
            import app.ramkeeper.sizing.water.*;
            import java.util.List;
            """;

    @Test
    void readmeExampleRuns(@TempDir Path folder) throws Exception {
        Path source = folder.resolve("Example.java");
        Files.writeString(
                source,
                IMPORTS + "public class Example { public static void main(String[] args) {\n" + example() + "}}");

        int failed = ToolProvider.getSystemJavaCompiler()
                .run(
                        null,
                        null,
                        null,
                        "-proc:none",
                        "-cp",
                        "target/classes",
                        "-d",
                        folder.toString(),
                        source.toString());

        assertThat(failed).isZero();
        assertThat(printedBy(folder)).isEqualTo("60.0");
    }

    private static String example() throws Exception {
        String readme = Files.readString(Path.of("README.md"));
        int start = readme.indexOf("```java\n");
        assertThat(start).isPositive();
        return readme.substring(start + 8, readme.indexOf("```", start + 8));
    }

    private static String printedBy(Path folder) throws Exception {
        PrintStream before = System.out;
        ByteArrayOutputStream printed = new ByteArrayOutputStream();
        try (URLClassLoader loader =
                        new URLClassLoader(new URL[] {folder.toUri().toURL()});
                PrintStream out = new PrintStream(printed, true, StandardCharsets.UTF_8)) {
            System.setOut(out);
            loader.loadClass("Example").getMethod("main", String[].class).invoke(null, (Object) new String[0]);
        } finally {
            System.setOut(before);
        }
        return printed.toString(StandardCharsets.UTF_8).strip();
    }
}
