package app.ramkeeper;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Assertions;
import org.opentest4j.TestAbortedException;

/**
 * Programs of the machine that some tests need. Where one is missing the test does not run and the end of the build says
 * so; with {@code -Drequire=browser,pg15} it fails instead.
 */
public final class Needs {

    private static final Path RECORD = Path.of("target", "missing.txt");

    private Needs() {}

    /** The system's Chromium. */
    public static Path browser() {
        return first("browser", "/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome");
    }

    /** The folder with the programs of an installed Postgres 15. */
    public static Path postgres15() {
        return first("pg15", "/usr/lib/postgresql/15/bin", "/usr/pgsql-15/bin", "/opt/homebrew/opt/postgresql@15/bin");
    }

    private static Path first(String need, String... places) {
        return Arrays.stream(places)
                .map(Path::of)
                .filter(Files::exists)
                .findFirst()
                .orElseThrow(() -> missing(need));
    }

    private static RuntimeException missing(String need) {
        if (List.of(System.getProperty("require", "").split(",")).contains(need)) {
            return Assertions.fail("This machine has no " + need + ", which -Drequire asks for");
        }
        String test = StackWalker.getInstance()
                .walk(frames -> frames.map(StackWalker.StackFrame::getClassName)
                        .filter(name -> name.endsWith("Tests"))
                        .findFirst()
                        .orElse("a test"));
        try {
            Files.createDirectories(RECORD.getParent());
            Files.writeString(RECORD, need + " " + test + "\n", StandardOpenOption.CREATE, StandardOpenOption.APPEND);
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
        return new TestAbortedException("Not run: this machine has no " + need);
    }

    /** Prints at the end of a build what was missing and how many test classes that left out. */
    public static void main(String[] arguments) throws IOException {
        if (!Files.exists(RECORD)) {
            System.out.println("Nothing was missing: every test of this build ran.");
            return;
        }
        TreeMap<String, Long> missing = new TreeMap<>();
        Files.readAllLines(RECORD).stream()
                .distinct()
                .forEach(line -> missing.merge(line.substring(0, line.indexOf(' ')), 1L, Long::sum));
        System.out.println("**********************************************************************");
        System.out.println("MISSING ON THIS MACHINE: " + missing.size() + " of the programs that tests need");
        missing.forEach(
                (need, classes) -> System.out.println("  " + need + ": " + classes + " test class(es) did NOT run"));
        System.out.println("Make absence a failure with -Drequire=browser,pg15");
        System.out.println("**********************************************************************");
    }
}
