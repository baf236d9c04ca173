package app.ramkeeper.field;

import app.ramkeeper.field.Causes.Cause;
import app.ramkeeper.field.Checklists.Item;
import app.ramkeeper.shared.Text;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The lists as the office types them: a line each, parts divided by a bar. */
final class ListLines {

    private static final int MOST = 50;
    private static final int LONGEST = 300;

    private ListLines() {}

    /** Says in words what is wrong with what was typed. */
    static final class Wrong extends RuntimeException {
        Wrong(String sentence) {
            super(sentence);
        }
    }

    private static List<String[]> lines(@Nullable String typed) {
        String clean;
        try {
            clean = Text.clean(typed);
        } catch (IllegalArgumentException control) {
            throw new Wrong(String.valueOf(control.getMessage()));
        }
        List<String[]> lines = new ArrayList<>();
        for (String line : (clean == null ? "" : clean).lines().toList()) {
            if (!line.isBlank()) {
                String[] parts = line.split("\\|", -1);
                for (int i = 0; i < parts.length; i++) {
                    parts[i] = parts[i].strip();
                    if (parts[i].length() > LONGEST) {
                        throw new Wrong("A line is too long: at most 300 characters between bars.");
                    }
                }
                lines.add(parts);
            }
        }
        if (lines.size() > MOST) {
            throw new Wrong("At most 50 lines.");
        }
        return lines;
    }

    /** "cause | what to do". */
    static List<Cause> causes(String symptom, @Nullable String typed) {
        return lines(typed).stream()
                .map(parts -> {
                    if (parts.length != 2 || parts[0].isEmpty() || parts[1].isEmpty()) {
                        throw new Wrong("Write each line as: cause | what to do. This one is not: " + parts[0]);
                    }
                    return new Cause(symptom, parts[0], parts[1]);
                })
                .toList();
    }

    static String of(List<Cause> causes) {
        return causes.stream().map(c -> c.cause() + " | " + c.action()).collect(Collectors.joining("\n"));
    }

    /** "step | hold | pressure | settings"; a step keeps its code as long as its words stay. */
    static List<Item> items(@Nullable String typed, List<Item> before) {
        Map<String, String> codes = before.stream().collect(Collectors.toMap(Item::text, Item::code, (a, b) -> a));
        Set<String> taken = new HashSet<>(codes.values());
        List<Item> items = new ArrayList<>();
        Set<String> said = new HashSet<>();
        for (String[] parts : lines(typed)) {
            if (parts[0].isEmpty() || !said.add(parts[0])) {
                throw new Wrong("Each line begins with its own words; this one is empty or there twice: " + parts[0]);
            }
            items.add(item(parts, codes.computeIfAbsent(parts[0], text -> fresh(taken))));
        }
        if (items.isEmpty()) {
            throw new Wrong("A list has at least one step.");
        }
        return items;
    }

    private static Item item(String[] parts, String code) {
        Set<String> marks = new HashSet<>();
        for (int i = 1; i < parts.length; i++) {
            marks.add(parts[i].toLowerCase(Locale.ROOT));
        }
        if (!Set.of("hold", "pressure", "settings").containsAll(marks)) {
            throw new Wrong("After the words only hold, pressure and settings can stand: " + parts[0]);
        }
        return new Item(
                code,
                parts[0],
                marks.contains("hold"),
                marks.contains("pressure") ? "PRESSURE" : null,
                marks.contains("settings"));
    }

    private static String fresh(Set<String> taken) {
        int n = 1;
        while (!taken.add("STEP_" + n)) {
            n++;
        }
        return "STEP_" + n;
    }

    static String ofItems(List<Item> items) {
        return items.stream()
                .map(i -> i.text()
                        + (i.hold() ? " | hold" : "")
                        + (i.caution() == null ? "" : " | pressure")
                        + (i.steps() ? " | settings" : ""))
                .collect(Collectors.joining("\n"));
    }
}
