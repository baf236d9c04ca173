package app.ramkeeper.visits.form;

import app.ramkeeper.shared.Text;
import app.ramkeeper.web.Choice;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.util.MultiValueMap;

/**
 * What a person typed, by field name, with a sentence for each field that cannot stand.
 *
 * <p>Reading a value notes a problem instead of failing, so one pass names them all; the page shows the same form again
 * as it was typed.
 */
public final class TypedForm {

    private static final Pattern NUMBER = Pattern.compile("[+-]?\\d{1,12}(\\.\\d{1,9})?");

    /** As many as a report may hold of a kind. */
    private static final int MOST_ROWS = 200;

    private final Map<String, String> typed = new LinkedHashMap<>();
    private final Map<String, List<String>> many = new LinkedHashMap<>();
    private final Map<String, String> problems = new LinkedHashMap<>();

    /** An empty form. */
    public TypedForm() {}

    /** A form as it was posted. */
    public TypedForm(MultiValueMap<String, String> posted) {
        posted.forEach((name, values) -> {
            many.put(name, values.stream().map(value -> clean(name, value)).toList());
            set(name, values.isEmpty() ? null : clean(name, values.get(0)));
        });
    }

    /** The same fields; reading them notes nothing here. */
    public TypedForm copy() {
        TypedForm copy = new TypedForm();
        copy.typed.putAll(typed);
        copy.many.putAll(many);
        return copy;
    }

    private String clean(String name, @Nullable String value) {
        try {
            String clean = Text.clean(value);
            return clean == null ? "" : clean;
        } catch (IllegalArgumentException control) {
            problem(name, "This text holds a control character. Please look at it and send it again.");
            return value == null ? "" : value.replaceAll("[\\p{Cntrl}\\u202A-\\u202E\\u2066-\\u2069&&[^\t\n]]", "");
        }
    }

    /** Puts a value into a field, as a page does before it is first shown. */
    public TypedForm set(String name, @Nullable Object value) {
        if (value == null || value.toString().isEmpty()) {
            typed.remove(name);
        } else {
            typed.put(name, value.toString());
        }
        return this;
    }

    /** What stands in the field; empty if nothing. */
    public String value(String name) {
        return typed.getOrDefault(name, "");
    }

    /** The fields in which something stands. */
    public Set<String> names() {
        return typed.keySet();
    }

    /** All values of a field that can be given more than once. */
    public List<String> values(String name) {
        return many.getOrDefault(name, List.of()).stream()
                .filter(value -> !value.isEmpty())
                .toList();
    }

    /** Adds a value to a field that can be given more than once. */
    public TypedForm add(String name, String value) {
        List<String> more = new ArrayList<>(values(name));
        if (!more.contains(value)) {
            more.add(value);
        }
        many.put(name, more);
        return this;
    }

    /** True if a drop-down's list no longer has what stands in the field: it is shown beside the list then. */
    public boolean unlisted(String name, List<Choice> options) {
        String value = value(name);
        return !value.isEmpty() && options.stream().noneMatch(o -> o.value().equals(value));
    }

    public boolean ticked(String name) {
        return value(name).equals("true");
    }

    /** The field's id in the page. */
    public String id(String name) {
        return name.replaceAll("[^A-Za-z0-9]+", "-");
    }

    public @Nullable String error(String name) {
        return problems.get(name);
    }

    public Map<String, String> problems() {
        return problems;
    }

    public boolean hasProblems() {
        return !problems.isEmpty();
    }

    /** Notes a problem; the first one of a field stands. */
    public void problem(String name, String sentence) {
        problems.putIfAbsent(name, sentence);
    }

    public @Nullable String text(String name) {
        return text(name, 2_000);
    }

    public @Nullable String text(String name, int most) {
        String value = value(name);
        if (value.length() > most) {
            problem(name, "This text is too long: at most %,d characters.".formatted(most));
        }
        return value.isEmpty() ? null : value;
    }

    public @Nullable LocalDate date(String name) {
        try {
            return typed.containsKey(name) ? LocalDate.parse(value(name)) : null;
        } catch (DateTimeException unreadable) {
            problem(name, "Give a date as year-month-day, for example 2026-11-24.");
            return null;
        }
    }

    public @Nullable LocalTime time(String name) {
        try {
            return typed.containsKey(name) ? LocalTime.parse(value(name)) : null;
        } catch (DateTimeException unreadable) {
            problem(name, "Give a time as hours:minutes, for example 14:05.");
            return null;
        }
    }

    /** A number with a point or a comma before the decimals, blanks between thousands. */
    public @Nullable BigDecimal number(String name) {
        String plain = value(name)
                .replace(',', '.')
                .replace('\u2212', '-')
                .replaceAll("(?<=\\d)[ \u00A0\u2009\u202F](?=\\d)", "");
        if (plain.isEmpty()) {
            return null;
        }
        if (!NUMBER.matcher(plain).matches()) {
            problem(name, "Give a number, for example 4.2.");
            return null;
        }
        return new BigDecimal(plain);
    }

    public @Nullable UUID uuid(String name) {
        String value = value(name);
        if (value.isEmpty()) {
            return null;
        }
        try {
            UUID id = UUID.fromString(value);
            if (id.toString().equalsIgnoreCase(value)) {
                return id;
            }
        } catch (IllegalArgumentException unreadable) {
            // said below
        }
        problem(name, "Choose one from the list.");
        return null;
    }

    public <E extends Enum<E>> @Nullable E choice(String name, Class<E> type) {
        String value = value(name);
        if (value.isEmpty()) {
            return null;
        }
        for (E constant : type.getEnumConstants()) {
            if (constant.name().equals(value)) {
                return constant;
            }
        }
        problem(name, "Choose one from the list.");
        return null;
    }

    /** How many rows of a repeated group to show: what the form says, within reason. */
    public int rows(String name, int least) {
        String value = value(name);
        int said = value.matches("\\d{1,3}") ? Integer.parseInt(value) : least;
        return Math.max(least, Math.min(said, MOST_ROWS));
    }
}
