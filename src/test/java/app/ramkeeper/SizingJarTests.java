package app.ramkeeper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.jar.JarFile;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import javax.tools.ToolProvider;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.stat.correlation.SpearmansCorrelation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The sizing jar alone, with Hipparchus and nothing else, in a program of its own. */
class SizingJarTests {

    private static final String IMPORTS = """
            import app.ramkeeper.sizing.design.*;
            import app.ramkeeper.sizing.line.*;
            import app.ramkeeper.sizing.pipe.*;
            import app.ramkeeper.sizing.quantity.*;
            import app.ramkeeper.sizing.ram.*;
            import app.ramkeeper.sizing.water.*;
            import java.util.*;
            """;

    /** The forecast is what needs Hipparchus: its normal distribution and its rank correlation. */
    private static final String FORECAST = """
            PumpModel pump = new PumpModel("Sixty",
                    RatioPerformance.of("sixty per cent", new double[] {2, 30}, new double[] {0.6, 0.6}),
                    Flow.ofLitresPerMinute(25), Flow.ofLitresPerMinute(60), new Head(1), new Head(12), new Head(100),
                    Pressure.ofBar(25), Length.ofMillimetres(50));
            PipeRun wide = new PipeRun(new Length(2), new Length(10), new Length(1e-6), 0);
            Battery battery = new Battery(List.of(new PumpUnit(pump, wide)), new Head(5), new Head(40),
                    LineLoss.of(List.of(wide), Ambient.standard()), Optional.empty(), Ambient.standard());
            Spread spread = new Spread(Uncertain.exact(5), Uncertain.exact(40), Uncertain.exact(1e-3), Uncertain.exact(1), 0,
                    new Uncertain(1, 0.15), Uncertain.exact(0.9));
            DeliveryForecast forecast = DeliveryForecast.of(battery, spread, 7, 1000);
            System.out.println(Math.round(forecast.p50().litresPerMinute() * 10) + " "
                    + forecast.contributions().get(0).input());
            """;

    @Test
    void runsTheExampleOfTheReadme(@TempDir Path folder) throws Exception {
        String readme = Files.readString(Path.of("README.md"));
        int start = readme.indexOf("```java\n");
        assertThat(start).isPositive();

        assertThat(run(folder, readme.substring(start + 8, readme.indexOf("```", start + 8))))
                .isEqualTo("60.0");
    }

    @Test
    void forecastsWithHipparchusOnly(@TempDir Path folder) throws Exception {
        // 60 l/min x 0.6 x 5 / 40 x 0.9 is 4.05 l/min; only the model is uncertain
        assertThat(run(folder, FORECAST)).isIn("40 model", "41 model");
    }

    @Test
    void holdsSizingOnly() throws IOException {
        try (JarFile jar = new JarFile(sizingJar().toFile())) {
            assertThat(jar.stream().filter(entry -> !entry.isDirectory()).map(ZipEntry::getName))
                    .filteredOn(name -> !name.startsWith("META-INF/"))
                    .hasSizeGreaterThan(100)
                    .allMatch(name -> name.startsWith("app/ramkeeper/sizing/") && name.endsWith(".class"));
        }
    }

    private static String run(Path folder, String statements) throws Exception {
        Path source = folder.resolve("Example.java");
        Files.writeString(
                source,
                IMPORTS + "public class Example { public static void main(String[] args) {\n" + statements + "}}");
        String path = Stream.of(sizingJar(), jarOf(NormalDistribution.class), jarOf(SpearmansCorrelation.class))
                .map(Path::toString)
                .collect(Collectors.joining(File.pathSeparator));
        int failed = ToolProvider.getSystemJavaCompiler()
                .run(null, null, null, "-proc:none", "-cp", path, "-d", folder.toString(), source.toString());
        assertThat(failed).isZero();

        Path java = Path.of(System.getProperty("java.home"), "bin", "java");
        Process process = new ProcessBuilder(
                        List.of(java.toString(), "-cp", path + File.pathSeparator + folder, "Example"))
                .redirectErrorStream(true)
                .start();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(printed).isZero();
        return printed.strip();
    }

    private static Path sizingJar() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("target"))) {
            return files.filter(file -> file.getFileName().toString().endsWith("-sizing.jar"))
                    .findFirst()
                    .orElseThrow();
        }
    }

    private static Path jarOf(Class<?> type) throws Exception {
        return Path.of(type.getProtectionDomain().getCodeSource().getLocation().toURI());
    }
}
