package app.ramkeeper.exchange;

import app.ramkeeper.catalogue.TaskKindCard;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Finds the kinds of task in what somebody wrote about the work: "new delivery rubber, strainer cleaned". */
final class WorkWords {

    private static final Pattern BETWEEN = Pattern.compile("[,;/+&\\n]|\\band\\b|\\.\\s|\\.$");
    private static final Pattern NO_WORD = Pattern.compile("[^\\p{L}\\p{N}]+");
    private static final Set<String> OPTIONAL = Set.of("valve", "pump", "for", "make", "a", "the", "after", "look");
    private static final Map<String, String> SAME = Map.of(
            "new", "chang", "repla", "chang", "renew", "chang", "fitte", "chang", "teste", "check", "set", "check",
            "prech", "pre", "sampl", "sampl");

    private final List<TaskKindCard> kinds;

    WorkWords(List<TaskKindCard> kinds) {
        this.kinds = kinds;
    }

    /**
     * What was found.
     *
     * @param kinds the kinds of task
     * @param unknown the parts of the text that name none
     */
    record Found(Set<TaskKindCard> kinds, List<String> unknown) {}

    Found read(String text) {
        Set<TaskKindCard> found = new LinkedHashSet<>();
        List<String> unknown = new ArrayList<>();
        for (String phrase : BETWEEN.split(text)) {
            if (!phrase.isBlank()) {
                Set<TaskKindCard> meant = meant(phrase);
                found.addAll(meant);
                if (meant.isEmpty()) {
                    unknown.add(phrase.strip());
                }
            }
        }
        return new Found(found, unknown);
    }

    private Set<TaskKindCard> meant(String phrase) {
        String plain = Fold.of(phrase).strip();
        Set<String> said = stems(plain);
        Set<TaskKindCard> exact = matching(kind -> plain.equals(Fold.of(kind.name()))
                || plain.equals(Fold.of(kind.code()))
                || plain.equals(Fold.of(kind.code()).replace('_', ' ')));
        if (!exact.isEmpty()) {
            return exact;
        }
        Set<TaskKindCard> byWords = matching(kind -> said.containsAll(wanted(kind)));
        boolean bothRubbers = plain.contains("rubbers") && !said.contains("deliv") && !said.contains("waste");
        return byWords.isEmpty() && bothRubbers
                ? Stream.of("deliv", "waste")
                        .flatMap(which -> matching(kind -> with(said, which).containsAll(wanted(kind))).stream())
                        .collect(Collectors.toCollection(LinkedHashSet::new))
                : byWords;
    }

    private Set<TaskKindCard> matching(java.util.function.Predicate<TaskKindCard> rule) {
        return kinds.stream().filter(rule).collect(Collectors.toCollection(LinkedHashSet::new));
    }

    private static Set<String> wanted(TaskKindCard kind) {
        Set<String> words = new HashSet<>(stems(Fold.of(kind.name())));
        OPTIONAL.forEach(word -> words.removeAll(stems(word)));
        return words.isEmpty() ? Set.of("\u0000") : words;
    }

    private static Set<String> with(Set<String> words, String more) {
        Set<String> all = new HashSet<>(words);
        all.add(more);
        return all;
    }

    /** The first five letters of each word, so that "cleaned" is "clean". */
    private static Set<String> stems(String text) {
        return NO_WORD.splitAsStream(text)
                .filter(word -> !word.isEmpty())
                .map(word -> word.length() <= 5 ? word : word.substring(0, 5))
                .map(stem -> SAME.getOrDefault(stem, stem))
                .collect(Collectors.toSet());
    }
}
