package app.ramkeeper.exchange;

import static app.ramkeeper.exchange.RegisterFields.*;

import app.ramkeeper.fleet.Position;
import app.ramkeeper.fleet.PositionText;
import app.ramkeeper.web.Say;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Reads register rows and applies the rules that need no look into the register. */
final class RegisterReader {

    /** The name of an install that the file gives none. */
    static final String UNNAMED = "Ram pump";

    private static final Set<String> OF_CUSTOMER = Set.of(CUSTOMER, CUSTOMER_REFERENCE, ADDRESS, EMAIL, PHONE);
    private static final Set<String> OF_PLACE = Set.of(
            CUSTOMER,
            CUSTOMER_REFERENCE,
            ADDRESS,
            EMAIL,
            PHONE,
            CONTACT,
            CONTACT_PHONE,
            CONTACT_EMAIL,
            SITE,
            SITE_REFERENCE,
            LOCALITY,
            DEPOT,
            LATITUDE,
            LONGITUDE,
            ALTITUDE,
            WAY_IN,
            GATE,
            SOURCE,
            WATER,
            DRINKING,
            NOTES);
    private static final double FAR_KM = 1500;

    private final CellReader cells;
    private final List<Field> fields;
    private final List<Position> depots;

    RegisterReader(Import imported, List<Field> fields, List<Position> depots, LocalDate today) {
        this.cells = new CellReader(imported, fields, today);
        this.fields = fields;
        this.depots = depots;
    }

    Parsed read(StagedRow row) {
        Parsed parsed = cells.read(row);
        position(parsed);
        lastDone(parsed);
        pipes(parsed);
        return parsed;
    }

    /** The reference or, without one, the names that tell the install. */
    static @Nullable String thing(Parsed row) {
        if (row.has(REFERENCE)) {
            return row.text(REFERENCE);
        }
        return row.has(CUSTOMER) && row.has(SITE) ? String.join("|", names(row)) : null;
    }

    static List<String> names(Parsed row) {
        String install = row.text(INSTALL);
        return List.of(
                String.valueOf(row.text(CUSTOMER)),
                String.valueOf(row.text(SITE)),
                install == null ? UNNAMED : install);
    }

    private void position(Parsed row) {
        String latitude = row.text(LATITUDE);
        String longitude = row.text(LONGITUDE);
        String both = row.text(POSITION);
        if (latitude == null && longitude == null && both == null) {
            return;
        }
        if (both == null && (latitude == null || longitude == null)) {
            row.problem(latitude == null ? LATITUDE : LONGITUDE, "A position needs both latitude and longitude.");
            return;
        }
        String field = both == null ? LATITUDE : POSITION;
        try {
            Position read = both == null
                    ? PositionText.parse(String.valueOf(latitude), String.valueOf(longitude))
                    : PositionText.parse(both);
            Optional<String> doubt = doubt(read);
            if (doubt.isPresent()) {
                row.problem(field, doubt.get());
            } else {
                row.put(LATITUDE, centimetre(read.latitude()));
                row.put(LONGITUDE, centimetre(read.longitude()));
                row.remove(POSITION);
            }
        } catch (IllegalArgumentException unreadable) {
            row.problem(field, swappedHint(latitude, longitude).orElse(String.valueOf(unreadable.getMessage())));
        }
    }

    /** Degrees with seven decimals: a centimetre, and a number that can be written and read again. */
    static double centimetre(double degrees) {
        return Math.round(degrees * 1e7) / 1e7;
    }

    private static Optional<String> swappedHint(@Nullable String latitude, @Nullable String longitude) {
        if (latitude == null || longitude == null) {
            return Optional.empty();
        }
        try {
            Position swapped = PositionText.parse(longitude, latitude);
            return Optional.of("Latitude and longitude look swapped. Is it " + swapped + " (latitude first)?");
        } catch (IllegalArgumentException neither) {
            return Optional.empty();
        }
    }

    /** A place far from every depot that would be near one with the numbers swapped or a sign turned is a slip. */
    private Optional<String> doubt(Position read) {
        if (read.latitude() == 0 && read.longitude() == 0) {
            return Optional.of("0, 0 stands for no position in many tables. Leave both empty if it is not known.");
        }
        if (depots.isEmpty() || nearest(read) < FAR_KM) {
            return Optional.empty();
        }
        List<Position> meant = new java.util.ArrayList<>(List.of(
                new Position(-read.latitude(), read.longitude()),
                new Position(read.latitude(), -read.longitude()),
                new Position(-read.latitude(), -read.longitude())));
        if (read.canSwap()) {
            meant.add(read.swapped());
        }
        return meant.stream()
                .filter(position -> nearest(position) < FAR_KM)
                .findFirst()
                .map(position ->
                        "%s is %,.0f km from your nearest depot. Is it %s?".formatted(read, nearest(read), position));
    }

    private double nearest(Position position) {
        return depots.stream().mapToDouble(position::kilometresTo).min().orElse(0);
    }

    private void lastDone(Parsed row) {
        Optional<LocalDate> commissioned = row.date(COMMISSIONED);
        for (Field field : fields) {
            Optional<LocalDate> done = field.code().startsWith(LAST) ? row.date(field.code()) : Optional.empty();
            if (done.isPresent() && commissioned.isPresent() && done.get().isBefore(commissioned.get())) {
                row.problem(
                        field.code(),
                        "%s %s lies before the install was commissioned (%s)."
                                .formatted(field.label(), Say.day(done.get()), Say.day(commissioned.get())));
            }
        }
    }

    private static void pipes(Parsed row) {
        Double fall = row.number(FALL);
        Double length = row.number(DRIVE_LENGTH);
        if (fall != null && length != null && length < fall) {
            row.problem(
                    DRIVE_LENGTH,
                    "A drive pipe of %s m cannot reach over a fall of %s m."
                            .formatted(Parsed.plain(length), Parsed.plain(fall)));
        }
    }

    /** What the register says otherwise than a row about an install that it has; empty if it says the same. */
    static List<Problem> differences(Parsed row, Map<String, Object> held, List<Field> fields) {
        return differences(row, held, fields, "or leave this row out");
    }

    /** What the register says otherwise of the site and the customer that a new install names: those stay as they are. */
    static List<Problem> differencesOfPlace(Parsed row, Map<String, Object> held, List<Field> fields) {
        Set<String> compared = held.isEmpty() ? Set.of() : held.containsKey(SITE) ? OF_PLACE : OF_CUSTOMER;
        return differences(
                row,
                held,
                fields.stream().filter(field -> compared.contains(field.code())).toList(),
                "or make this cell the same or blank");
    }

    private static List<Problem> differences(Parsed row, Map<String, Object> held, List<Field> fields, String instead) {
        List<Problem> differences = new java.util.ArrayList<>();
        Map<String, String> said = row.canonical();
        for (Field field : fields) {
            String here = said.get(field.code());
            Object there = held.get(field.code());
            if (here != null && !same(field, here, there)) {
                differences.add(new Problem(
                        field.code(),
                        "%s is %s in the register already, and %s here. Change it on its own page, %s."
                                .formatted(
                                        field.label(),
                                        there == null ? "blank" : said(field, Parsed.plain(there)),
                                        said(field, here),
                                        instead)));
            }
        }
        return differences;
    }

    /** A value in quotes; a day as pages say it. */
    private static String said(Field field, String value) {
        boolean day = field.type() == Field.Type.DATE || field.type() == Field.Type.DATE_OR_UNKNOWN;
        return "“" + (day && !value.equals(Parsed.UNKNOWN) ? Say.day(LocalDate.parse(value)) : value) + "”";
    }

    private static boolean same(Field field, String here, @Nullable Object there) {
        if (field.code().startsWith(LAST)) {
            return there != null && there.toString().compareTo(here) >= 0;
        }
        if (field.code().equals(DRINKING) && there == null) {
            return here.equals("no");
        }
        return there != null && Fold.of(Parsed.plain(there)).equals(Fold.of(here));
    }
}
