package app.ramkeeper.exchange.reading;

import app.ramkeeper.shared.Measured;
import app.ramkeeper.shared.Unit;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a number with its unit, in the cell or in the column's heading. */
public final class Quantities {

    private static final Pattern NUMBER_UNIT = Pattern.compile("([-+−]?[\\d.,\\s\\u00A0\\u2009\\u202F]+)\\s*(\\D.*)?");
    private static final Map<Unit, List<String>> SPELLINGS = Map.of(
            Unit.LITRE_PER_MINUTE,
                    List.of("l/min", "lpm", "l/m", "litres/min", "litre/min", "l min", "lmin", "litres per minute"),
            Unit.LITRE_PER_DAY, List.of("l/day", "l/d", "litres/day", "litres per day", "lpd"),
            Unit.LITRE_PER_SECOND, List.of("l/s", "l/sec", "lps", "litres/second", "litres per second"),
            Unit.METRE, List.of("m", "metre", "metres", "meter", "meters"),
            Unit.MILLIMETRE, List.of("mm"),
            Unit.BAR, List.of("bar"),
            Unit.KILOPASCAL, List.of("kpa"),
            Unit.PER_MINUTE, List.of("/min", "beats/min", "bpm", "per minute", "beats per minute", "1/min"),
            Unit.CELSIUS, List.of("°c", "c", "deg c"),
            Unit.PERCENT, List.of("%"));

    private Quantities() {}

    /** Reads a quantity; a unit in the cell holds over the column's, and must measure the same thing. */
    public static Optional<Measured> read(String text, DecimalMark mark, Unit usual) {
        Matcher parts = NUMBER_UNIT.matcher(text.strip());
        if (!parts.matches()) {
            return Optional.empty();
        }
        String written = parts.group(2);
        Optional<Unit> unit =
                written == null ? Optional.of(usual) : unit(written).filter(usual::comparableWith);
        return unit.flatMap(u -> mark.read(parts.group(1)).map(number -> new Measured(number, u)));
    }

    /** The unit that a heading names in brackets or at its end: "Delivered (l/day)", "Fall m". */
    public static Optional<Unit> ofHeading(String heading, Unit usual) {
        Matcher bracket = Pattern.compile("[\\[(]([^\\])]+)[\\])]").matcher(heading);
        String last = heading.strip().replaceAll(".*\\s", "");
        return (bracket.find() ? unit(bracket.group(1)) : unit(last)).filter(usual::comparableWith);
    }

    private static Optional<Unit> unit(String spelling) {
        String plain = spelling.strip().toLowerCase(Locale.ROOT);
        return SPELLINGS.entrySet().stream()
                .filter(entry -> entry.getValue().contains(plain))
                .map(Map.Entry::getKey)
                .findFirst();
    }
}
