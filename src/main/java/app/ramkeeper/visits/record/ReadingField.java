package app.ramkeeper.visits.record;

import app.ramkeeper.shared.Unit;
import app.ramkeeper.visits.MeasuredAt;
import app.ramkeeper.visits.Quantity;
import app.ramkeeper.visits.form.TypedForm;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * One reading the form asks for: what, where, at which install. The first five stand open, the others are folded away.
 *
 * @param number 1 for the one that is asked for, more where a report holds further readings of the same
 */
public record ReadingField(UUID install, Quantity quantity, MeasuredAt place, int number, boolean usual) {

    private static final Pattern NAME =
            Pattern.compile("([A-Z_]{1,40})\\.([A-Z_]{1,40})(?:\\.(\\d{1,3}))?\\.[A-Za-z]+");

    private record Asked(Quantity quantity, MeasuredAt place, boolean usual) {}

    private static final List<Asked> ASKED = List.of(
            new Asked(Quantity.DRIVE_FLOW, MeasuredAt.PUMP, true),
            new Asked(Quantity.DELIVERED_FLOW, MeasuredAt.PUMP, true),
            new Asked(Quantity.DELIVERED_FLOW, MeasuredAt.TANK, true),
            new Asked(Quantity.BEAT_RATE, MeasuredAt.PUMP, true),
            new Asked(Quantity.DELIVERY_PRESSURE, MeasuredAt.PUMP, true),
            new Asked(Quantity.PRE_CHARGE, MeasuredAt.PUMP, false),
            new Asked(Quantity.WASTE_FLOW, MeasuredAt.PUMP, false),
            new Asked(Quantity.SOURCE_FLOW, MeasuredAt.SOURCE, false),
            new Asked(Quantity.FALL, MeasuredAt.PUMP, false),
            new Asked(Quantity.WATER_TEMPERATURE, MeasuredAt.SOURCE, false));

    /** All readings that can be put down for an install, and those beyond them that the form holds already. */
    public static List<ReadingField> of(UUID install, TypedForm form) {
        List<ReadingField> asked = ASKED.stream()
                .map(a -> new ReadingField(install, a.quantity(), a.place(), 1, a.usual()))
                .toList();
        List<String> names = asked.stream().map(ReadingField::name).toList();
        Stream<ReadingField> further = form.names().stream()
                .flatMap(name -> named(install, name))
                .filter(field -> !names.contains(field.name()))
                .distinct()
                .sorted(Comparator.comparing(ReadingField::quantity)
                        .thenComparing(ReadingField::place)
                        .thenComparing(ReadingField::number));
        return Stream.concat(asked.stream(), further).toList();
    }

    private static Stream<ReadingField> named(UUID install, String name) {
        String prefix = "reading." + install + ".";
        Matcher parts = NAME.matcher(name.startsWith(prefix) ? name.substring(prefix.length()) : "");
        if (!parts.matches()) {
            return Stream.empty();
        }
        int number = parts.group(3) == null ? 1 : Math.max(1, Integer.parseInt(parts.group(3)));
        return EnumSet.allOf(Quantity.class).stream()
                .filter(quantity -> quantity.name().equals(parts.group(1)))
                .flatMap(quantity -> EnumSet.allOf(MeasuredAt.class).stream()
                        .filter(place -> place.name().equals(parts.group(2)))
                        .map(place -> new ReadingField(install, quantity, place, number, true)));
    }

    /** Prefix of its fields' names. */
    public String name() {
        return "reading." + install + "." + quantity + "." + place + (number == 1 ? "" : "." + number);
    }

    public List<Unit> units() {
        return quantity.units();
    }
}
