package app.ramkeeper.exchange;

import app.ramkeeper.shared.Unit;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * One thing that a column can say.
 *
 * @param code its name in mappings
 * @param label its name on pages, and its heading in exports
 * @param unit of a number: what one without a unit is read in
 * @param least of a number
 * @param most of a number; of a text, its length
 * @param required true if a column must be chosen and its cells filled
 * @param choices of a choice: the code by spelling, lower case
 * @param headings other headings by which it is guessed, lower case
 */
public record Field(
        String code,
        String label,
        Type type,
        @Nullable Unit unit,
        double least,
        double most,
        boolean required,
        Map<String, String> choices,
        List<String> headings) {

    /** What a cell may hold. */
    public enum Type {
        TEXT,
        DATE,
        DATE_OR_UNKNOWN,
        NUMBER,
        CHOICE
    }

    private static final Pattern BRACKETS = Pattern.compile("[\\[(][^\\])]*[\\])]");
    private static final Pattern NO_WORD = Pattern.compile("[^\\p{L}\\p{N}]+");

    static Field text(String code, String label, int longest, String... headings) {
        return new Field(code, label, Type.TEXT, null, 0, longest, false, Map.of(), List.of(headings));
    }

    static Field date(String code, String label, String... headings) {
        return new Field(code, label, Type.DATE, null, 0, 0, false, Map.of(), List.of(headings));
    }

    static Field dateOrUnknown(String code, String label, String... headings) {
        return new Field(code, label, Type.DATE_OR_UNKNOWN, null, 0, 0, false, Map.of(), List.of(headings));
    }

    static Field number(String code, String label, Unit unit, double least, double most, String... headings) {
        return new Field(code, label, Type.NUMBER, unit, least, most, false, Map.of(), List.of(headings));
    }

    static Field choice(String code, String label, Map<String, String> choices, String... headings) {
        return new Field(code, label, Type.CHOICE, null, 0, 0, false, choices, List.of(headings));
    }

    Field needed() {
        return new Field(code, label, type, unit, least, most, true, choices, headings);
    }

    /** The label with its unit, as an export's heading gives it. */
    public String heading() {
        return unit == null ? label : label + " (" + unit.symbol() + ")";
    }

    /** True if a heading, without unit and punctuation, is one of this field's. */
    boolean isMeantBy(String heading) {
        String plain = plain(heading);
        return plain.equals(plain(label)) || headings.contains(plain);
    }

    private static String plain(String heading) {
        String bare = BRACKETS.matcher(heading.toLowerCase(Locale.ROOT)).replaceAll(" ");
        return NO_WORD.matcher(bare).replaceAll(" ").strip();
    }
}
