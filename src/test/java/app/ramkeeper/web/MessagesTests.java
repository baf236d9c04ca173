package app.ramkeeper.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Words of pages stand in bundles: none is missing, none is left over, none stands in a template itself. */
class MessagesTests {

    @ParameterizedTest
    @CsvSource({
        "upkeep, due.count, 1 task",
        "upkeep, weather.touched, It touches 1 install.",
        "visits, visits.list.count, 1 visit",
        "stock, stock.count, 1 row",
        "calls, calls.count, 1 call",
        "identity, trail.count, '1 change, the newest first'",
        "rounds, rounds.publishedBefore, 'Published, 1 change since'",
        "rounds, rounds.tell.tries, 1 try",
        "exchange, exchange.show.progress, 1 of 1 row"
    })
    void oneIsNotMany(String bundle, String key, String words) throws IOException {
        Properties said = new Properties();
        try (Reader in = Files.newBufferedReader(MAIN.resolve("resources/messages/" + bundle + ".properties"))) {
            said.load(in);
        }
        MessageFormat format = new MessageFormat(said.getProperty(key), Locale.UK);

        assertThat(format.format(new Object[] {1L, 1L})).isEqualTo(words);
        assertThat(format.format(new Object[] {2L, 2L})).doesNotContain("{").isNotEqualTo(words);
    }

    private static final Path MAIN = Path.of("src/main");
    private static final Path TEMPLATES = MAIN.resolve("resources/templates");

    /** A key in a template, or as the message of a rule for a field. */
    private static final Pattern IN_TEMPLATE = Pattern.compile("#\\{([A-Za-z][\\w.-]*)");

    private static final Pattern IN_RULE = Pattern.compile("message = \"\\{([A-Za-z][\\w.]*)}\"");

    /** What a controller lets the next page say. */
    private static final Pattern SAVED = Pattern.compile("addFlashAttribute\\(\\s*\"saved\",\\s*([^;]+);");

    private static final Pattern LITERAL = Pattern.compile("\"([^\"]*)\"");

    private static final Pattern SENTENCE = Pattern.compile("^\\p{Lu}|\\p{L}[ :]|\\.$");

    private static final Pattern IN_SAVED = Pattern.compile("Saved\\.of\\(\\s*\"([^\"]+)\"");

    /** Anything that looks like a key, and the beginning of one that is put together: 'quotes.state.' or |part.kind.${. */
    private static final Pattern WHOLE = Pattern.compile("[A-Za-z]\\w*(?:\\.[\\w-]+)+");

    private static final Pattern BEGUN = Pattern.compile("[|'\"]([A-Za-z]\\w*(?:\\.[\\w-]+)*\\.)(?:'|\"|\\$\\{)");

    /** Keys that a framework asks for by its own rules: of a field, or of a kind of error. */
    private static final Pattern BY_FRAMEWORK =
            Pattern.compile("(NotBlank|NotNull|DecimalMin)\\.\\w+\\.\\w+|typeMismatch.*|jakarta\\.validation\\..*");

    private static final Pattern TAG =
            Pattern.compile("<!DOCTYPE[^>]*>|<(/?)([a-zA-Z][\\w:-]*)((?:\"[^\"]*\"|'[^']*'|[^>\"'])*?)(/?)>");
    private static final Pattern SPOKEN =
            Pattern.compile("(?<![\\w:-])(title|aria-label|placeholder|alt|label)=\"[^\"]*[A-Za-z]{2,}[^\"]*\"");
    private static final Set<String> EMPTY = Set.of("input", "br", "img", "meta", "link", "hr", "col", "path", "line");

    @Test
    void everyKeyThatIsAskedForStandsInABundle() {
        Set<String> keys = keys().keySet();
        Map<String, String> missing = new TreeMap<>();
        files(TEMPLATES, ".html")
                .forEach((file, text) -> IN_TEMPLATE
                        .matcher(withoutComments(text))
                        .results()
                        .map(found -> found.group(1))
                        .filter(key -> !key.endsWith(".") && !keys.contains(key))
                        .forEach(key -> missing.put(key, file)));
        files(MAIN.resolve("java"), ".java")
                .forEach((file, text) -> IN_RULE.matcher(text)
                        .results()
                        .map(found -> found.group(1))
                        .filter(key -> !key.startsWith("jakarta.") && !keys.contains(key))
                        .forEach(key -> missing.put(key, file)));

        assertThat(missing).isEmpty();
    }

    @Test
    void whatWasSavedIsSaidInWordsOfABundle() {
        Set<String> keys = keys().keySet();
        List<String> stray = new ArrayList<>();
        files(MAIN.resolve("java"), ".java").forEach((file, text) -> {
            found(IN_SAVED, text, 1).stream()
                    .filter(key -> !keys.contains(key))
                    .forEach(key -> stray.add(file + ": no such key " + key));
            found(SAVED, text, 1).stream()
                    .filter(said -> found(LITERAL, said, 1).stream()
                            .anyMatch(literal -> SENTENCE.matcher(literal).find()))
                    .forEach(said -> stray.add(file + ": " + said));
        });

        assertThat(stray).isEmpty();
    }

    /** Only a message with arguments is formatted, so only there a quote is doubled. */
    @Test
    void doublesQuotesOnlyWhereArgumentsAre() {
        Map<String, String> wrong = words();
        wrong.values()
                .removeIf(
                        words -> words.contains("{0") ? !words.replace("''", "").contains("'") : !words.contains("''"));

        assertThat(wrong).isEmpty();
    }

    @Test
    void everyBeginningOfAKeyInATemplateHasKeys() {
        Set<String> keys = keys().keySet();

        assertThat(files(TEMPLATES, ".html").values().stream()
                        .flatMap(text -> Pattern.compile("#\\{[|']([A-Za-z][\\w.-]*\\.)")
                                .matcher(text)
                                .results())
                        .map(found -> found.group(1))
                        .distinct()
                        .filter(begun -> keys.stream().noneMatch(key -> key.startsWith(begun))))
                .isEmpty();
    }

    @Test
    void noKeyIsLeftOver() {
        String code = String.join("\n", files(TEMPLATES, ".html").values())
                + String.join("\n", files(MAIN.resolve("java"), ".java").values());
        String rules = String.join("\n", files(Path.of("db/migration"), ".sql").values());
        Set<String> whole = found(WHOLE, code, 0);
        Set<String> begun = found(BEGUN, code, 1);
        begun.remove("rule.");

        Set<String> left = keys().keySet().stream()
                .filter(key -> !whole.contains(key))
                .filter(key -> begun.stream().noneMatch(key::startsWith))
                .filter(key -> !BY_FRAMEWORK.matcher(key).matches())
                .filter(key -> !key.startsWith("rule.") || !rules.contains(key.split("\\.")[1]))
                .collect(Collectors.toCollection(TreeSet::new));

        assertThat(left).isEmpty();
    }

    @Test
    void noKeyStandsInTwoBundles() {
        assertThat(keys())
                .allSatisfy((key, bundles) -> assertThat(bundles).as(key).hasSize(1));
    }

    @Test
    void noTemplateHasWordsOfItsOwn() {
        List<String> stray = new ArrayList<>();
        files(TEMPLATES, ".html")
                .forEach((file, text) -> stray(withoutComments(text)).forEach(words -> stray.add(file + ": " + words)));

        assertThat(stray).isEmpty();
    }

    /** Text that no attribute of its element, or of one around it, replaces; and attributes read out that none sets. */
    private static List<String> stray(String template) {
        List<String> stray = new ArrayList<>();
        Deque<Boolean> replaced = new ArrayDeque<>();
        Deque<String> open = new ArrayDeque<>();
        Matcher tag = TAG.matcher(template);
        int from = 0;
        while (tag.find()) {
            String text = template.substring(from, tag.start())
                    .replaceAll("&#?\\w+;", "")
                    .strip();
            from = tag.end();
            boolean styles = "style".equals(open.peek());
            if (!styles
                    && !replaced.contains(true)
                    && text.matches("(?s).*[A-Za-z]{2,}.*")
                    && !text.equals("Ramkeeper")) {
                stray.add(text);
            }
            if (tag.group(2) == null) {
                continue;
            }
            if (tag.group(1).isEmpty()) {
                String attributes = tag.group(3);
                SPOKEN.matcher(attributes)
                        .results()
                        .filter(found -> !attributes.contains("th:" + found.group(1) + "="))
                        .map(MatchResult::group)
                        .forEach(stray::add);
                if (tag.group(4).isEmpty() && !EMPTY.contains(tag.group(2))) {
                    open.push(tag.group(2));
                    replaced.push(Pattern.compile("th:(text|replace|insert|remove)=")
                            .matcher(attributes)
                            .find());
                }
            } else {
                while (!open.isEmpty() && !open.peek().equals(tag.group(2))) {
                    open.pop();
                    replaced.pop();
                }
                if (!open.isEmpty()) {
                    open.pop();
                    replaced.pop();
                }
            }
        }
        return stray;
    }

    private static String withoutComments(String template) {
        return Pattern.compile("<!--.*?-->", Pattern.DOTALL).matcher(template).replaceAll("");
    }

    private static Set<String> found(Pattern pattern, String text, int group) {
        return pattern.matcher(text).results().map(found -> found.group(group)).collect(Collectors.toSet());
    }

    /** Each key with the bundles it stands in. */
    private static Map<String, List<String>> keys() {
        Map<String, List<String>> keys = new TreeMap<>();
        bundles((bundle, words) -> words.stringPropertyNames()
                .forEach(key ->
                        keys.computeIfAbsent(key, k -> new ArrayList<>()).add(String.valueOf(bundle.getFileName()))));
        assertThat(keys).isNotEmpty();
        return keys;
    }

    private static Map<String, String> words() {
        Map<String, String> all = new TreeMap<>();
        bundles((bundle, words) -> words.stringPropertyNames().forEach(key -> all.put(key, words.getProperty(key))));
        assertThat(all).isNotEmpty();
        return all;
    }

    private static void bundles(BiConsumer<Path, Properties> each) {
        for (Path bundle : paths(MAIN.resolve("resources/messages"), ".properties")) {
            Properties words = new Properties();
            try (Reader in = Files.newBufferedReader(bundle)) {
                words.load(in);
            } catch (IOException unreadable) {
                throw new UncheckedIOException(unreadable);
            }
            each.accept(bundle, words);
        }
    }

    private static Map<String, String> files(Path folder, String ending) {
        Map<String, String> texts = new TreeMap<>();
        for (Path file : paths(folder, ending)) {
            try {
                texts.put(folder.relativize(file).toString(), Files.readString(file));
            } catch (IOException unreadable) {
                throw new UncheckedIOException(unreadable);
            }
        }
        assertThat(texts).isNotEmpty();
        return texts;
    }

    private static List<Path> paths(Path folder, String ending) {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(file -> file.toString().endsWith(ending)).toList();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
