package app.ramkeeper;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import jakarta.persistence.Entity;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.data.repository.Repository;

/** Rules of the code that the module check does not see. */
class ArchitectureTests {

    private static final JavaClasses CODE = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("app.ramkeeper");

    private static final Path SCRIPTS = Path.of("src/main/resources/static");
    private static final Path TEMPLATES = Path.of("src/main/resources/templates");

    @Test
    void entitiesAndRepositoriesStayInTheirFeature() {
        classes()
                .that()
                .areAnnotatedWith(Entity.class)
                .should()
                .bePackagePrivate()
                .check(CODE);
        classes()
                .that()
                .areAssignableTo(Repository.class)
                .should()
                .bePackagePrivate()
                .check(CODE);
    }

    @Test
    void sizingIsPlainJava() {
        classes()
                .that()
                .resideInAPackage("app.ramkeeper.sizing..")
                .should()
                .onlyDependOnClassesThat()
                .resideInAnyPackage(
                        "java..",
                        "org.jspecify..",
                        "org.hipparchus..",
                        "app.ramkeeper.sizing..",
                        "org.springframework.modulith")
                .check(CODE);
    }

    @Test
    @DisplayName(
            "SEC-34 the worker and the pages listen to nobody; between tabs of the application goes only a draft's id")
    void sec34ScriptsTakeNoMessages() throws IOException {
        Pattern listener = Pattern.compile(".*(onmessage|addEventListener\\(['\"`]message).*");
        List<String> found = new ArrayList<>();
        try (var files = Files.walk(SCRIPTS)) {
            for (Path script :
                    files.filter(file -> file.toString().endsWith(".js")).toList()) {
                Files.readAllLines(script).stream()
                        .filter(line -> listener.matcher(line).matches())
                        .forEach(found::add);
            }
        }
        assertThat(found).containsExactly("windows.onmessage = (e) => { if (e.data === live?.id) { look(); } };");
    }

    @Test
    @DisplayName("SEC-05 starts no program of the operating system")
    void sec05StartsNoProgram() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .haveFullyQualifiedName(ProcessBuilder.class.getName())
                .orShould()
                .callMethod(Runtime.class, "exec", String.class)
                .orShould()
                .callMethod(Runtime.class, "exec", String[].class)
                .orShould()
                .callMethod(Runtime.class, "exec", String.class, String[].class)
                .check(CODE);
        // The one class that lets a library start the trial's database server, with fixed arguments.
        noClasses()
                .that()
                .doNotHaveSimpleName("EmbeddedServer")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("io.zonky..")
                .check(CODE);
    }

    @Test
    @DisplayName("SEC-12 reads no Java object streams")
    void sec12ReadsNoObjectStreams() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .haveFullyQualifiedName(java.io.ObjectInputStream.class.getName())
                .orShould()
                .dependOnClassesThat()
                .haveNameMatching(".*(BasicPolymorphicTypeValidator|ObjectMapper\\$DefaultTyping|XMLDecoder)")
                .check(CODE);
    }

    @Test
    @DisplayName("SEC-24 keeps scripts to text: nothing is written as markup or run from a string")
    void sec24ScriptsWriteText() throws IOException {
        assertThat(
                        lines(
                                SCRIPTS,
                                ".js",
                                "innerHTML|outerHTML|insertAdjacentHTML|document\\.write|\\beval\\s*\\(|new\\s+Function|setTimeout\\s*\\(\\s*['\"`]"))
                .isEmpty();
        assertThat(lines(TEMPLATES, ".html", "th:utext|<script(?![^>]*src)|\\son[a-z]+\\s*=|\\sstyle\\s*=|javascript:"))
                .isEmpty();
    }

    @Test
    @DisplayName("no template holds what goes wrong only once there is something to draw")
    void templatesHoldNoTraps() throws IOException {
        assertThat(lines(
                        TEMPLATES,
                        ".html",
                        "<[^>]*th:(if|unless)=[^>]*th:replace=|<[^>]*th:replace=[^>]*th:(if|unless)="))
                .as("a condition beside a replacement: the replacement goes first")
                .isEmpty();
        assertThat(lines(TEMPLATES, ".html", "th:(aria|data)-[a-z-]+=\"[^\"]*\\$\\{@"))
                .as("a bean asked where the engine forbids it")
                .isEmpty();
    }

    @Test
    @DisplayName("SEC-71 uses neither broken hashes and ciphers nor guessable random numbers")
    void sec71UsesNoBrokenAlgorithm() throws IOException {
        assertThat(lines(
                        Path.of("src/main/java"),
                        ".java",
                        "\"(MD5|MD2|SHA-?1|DES|DESede|RC4)\"|/ECB/|Math\\.random\\("))
                .isEmpty();
        noClasses()
                .that()
                .resideInAnyPackage("app.ramkeeper.identity..", "app.ramkeeper.trial..", "app.ramkeeper.shared..")
                .should()
                .dependOnClassesThat()
                .haveNameMatching("java\\.util\\.(Random|SplittableRandom|concurrent\\.ThreadLocalRandom)")
                .check(CODE);
    }

    @Test
    @DisplayName("SEC-72 keeps no password, key or token among the files")
    void sec72KeepsNoSecrets() throws IOException {
        String secret =
                "-----BEGIN [A-Z ]*PRIVATE KEY|(?i)(password|secret|token|api.?key)\\s*[:=]\\s*[\"']?(?![$/{<#@&.(]|\\|)[A-Za-z0-9+/_-]{8,}[\"']?\\s*$";
        for (String ending : List.of("application.properties", ".yml", ".service", ".sql", ".conf", ".md")) {
            for (Path root : List.of(Path.of("src"), Path.of("ops"), Path.of("db"))) {
                assertThat(lines(root, ending, secret)).isEmpty();
            }
        }
        assertThat(lines(Path.of("docker-compose.yml"), ".yml", secret)).isEmpty();
    }

    @Test
    @DisplayName(
            "SEC-48 password fields let password managers work: their kind, their purpose, nothing that stops pasting")
    void sec48PasswordManagersWork() throws IOException {
        List<String> fields = lines(TEMPLATES, ".html", "type=\"password\"");
        assertThat(fields)
                .hasSizeGreaterThan(3)
                .allMatch(line -> line.contains("autocomplete=\"current-password\"")
                        || line.contains("autocomplete=\"new-password\""))
                .allMatch(line -> line.contains("data-showable"));
        assertThat(lines(TEMPLATES, "sign-in.html", "autocomplete=\"username\""))
                .hasSize(1);
        assertThat(lines(Path.of("src/main/resources/static"), ".js", "onpaste|'paste'|\"paste\""))
                .isEmpty();
    }

    /** Lines of our own files that match; files that came from elsewhere stand in webjars, not here. */
    private static List<String> lines(Path root, String ending, String pattern) throws IOException {
        Pattern wanted = Pattern.compile(pattern);
        List<String> found = new ArrayList<>();
        try (var files = Files.walk(root)) {
            for (Path file :
                    files.filter(path -> path.toString().endsWith(ending)).toList()) {
                List<String> lines = Files.readAllLines(file);
                for (int i = 0; i < lines.size(); i++) {
                    if (wanted.matcher(lines.get(i)).find()) {
                        found.add(file + ":" + (i + 1) + ": " + lines.get(i).strip());
                    }
                }
            }
        }
        return found;
    }
}
