package app.ramkeeper.exchange;

import app.ramkeeper.shared.Measured;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What a row's cells mean, by field; blank cells are absent. Gathers what is wrong with them. */
final class Parsed {

    /** The word for a day that nobody knows. */
    static final String UNKNOWN = "unknown";

    private final int line;
    private final Map<String, Object> values = new LinkedHashMap<>();
    private final Map<String, Measured> measured = new LinkedHashMap<>();
    private final List<Problem> problems = new ArrayList<>();

    Parsed(int line) {
        this.line = line;
    }

    int line() {
        return line;
    }

    void put(String code, Object value) {
        values.put(code, value);
    }

    void remove(String code) {
        values.remove(code);
    }

    /** Keeps a number also as it was written. */
    void put(String code, Measured written) {
        measured.put(code, written);
    }

    Optional<Measured> measured(String code) {
        return Optional.ofNullable(measured.get(code));
    }

    void problem(String field, String sentence) {
        problems.add(new Problem(field, sentence));
    }

    List<Problem> problems() {
        return problems;
    }

    boolean has(String code) {
        return values.containsKey(code);
    }

    @Nullable
    String text(String code) {
        Object value = values.get(code);
        return value == null ? null : value.toString();
    }

    Optional<LocalDate> date(String code) {
        return values.get(code) instanceof LocalDate date ? Optional.of(date) : Optional.empty();
    }

    @Nullable
    Double number(String code) {
        return values.get(code) instanceof Double number ? number : null;
    }

    /** The last done days, by the code of the kind of task. */
    Map<String, LocalDate> lastDone() {
        Map<String, LocalDate> days = new LinkedHashMap<>();
        values.forEach((code, value) -> {
            if (code.startsWith(RegisterFields.LAST) && value instanceof LocalDate day) {
                days.put(code.substring(RegisterFields.LAST.length()), day);
            }
        });
        return days;
    }

    /** All that the row says, each in its one way of writing. */
    Map<String, String> canonical() {
        Map<String, String> plain = new LinkedHashMap<>();
        values.forEach((code, value) -> plain.put(code, plain(value)));
        return plain;
    }

    /** The one way of writing a value, in comparisons and exports. */
    static String plain(Object value) {
        if (value instanceof Double number) {
            String text =
                    new BigDecimal(Double.toString(number)).stripTrailingZeros().toPlainString();
            return text.equals("-0") ? "0" : text;
        }
        return value.toString();
    }
}
