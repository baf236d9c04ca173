package app.ramkeeper.exchange.reading;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Pattern;

/** What stands between whole and part of a number. */
public enum DecimalMark {
    POINT('.', ','),
    COMMA(',', '.');

    private final Pattern grouped;
    private final char mark;
    private final char group;

    DecimalMark(char mark, char group) {
        this.mark = mark;
        this.group = group;
        this.grouped = Pattern.compile("[-+]?\\d{1,3}(?:\\" + group + "\\d{3})+(?:\\" + mark + "\\d+)?");
    }

    private static final Pattern PLAIN = Pattern.compile("[-+]?\\d{1,15}(?:[.,]\\d{1,12})?");

    /**
     * Reads a number; empty if the text is none. The other mark is taken for a decimal mark too where it cannot be a
     * thousands mark: 12.5 in a file with decimal commas.
     */
    public Optional<BigDecimal> read(String text) {
        String plain = text.replaceAll("[\\s\\u00A0\\u2009\\u202F'’]", "").replace('−', '-');
        if (plain.length() > 30) {
            return Optional.empty();
        }
        if (grouped.matcher(plain).matches()) {
            return Optional.of(
                    new BigDecimal(plain.replace(String.valueOf(group), "").replace(mark, '.')));
        }
        return PLAIN.matcher(plain).matches() ? Optional.of(new BigDecimal(plain.replace(',', '.'))) : Optional.empty();
    }
}
