package app.ramkeeper.fleet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads a position as people write it: decimal degrees or degrees, minutes and seconds, with or without N, S, E, W, with
 * decimal points or commas. The latitude comes first unless the letters say otherwise.
 */
public final class PositionText {

    private static final int LONGEST = 80;
    private static final Pattern COMMA_DECIMAL = Pattern.compile("(?<=\\d),(?=\\d)");
    private static final Pattern MARKS = Pattern.compile("[°ºd'′’‘m\"″“”s:]");
    private static final Pattern TOKEN = Pattern.compile("([NSEW])|([+-]?\\d{1,4}(?:\\.\\d{1,12})?)|([,;/|])");

    private PositionText() {}

    /**
     * Reads both numbers from one text.
     *
     * @throws IllegalArgumentException with a sentence that says what cannot be read
     */
    public static Position parse(String text) {
        if (text.length() > LONGEST) {
            throw unreadable();
        }
        String plain = text.toUpperCase(Locale.ROOT)
                .replace('−', '-')
                .replace('–', '-')
                .strip();
        List<Angle> angles = Angle.read(tokens(decimalPoints(plain)));
        if (angles.size() != 2) {
            throw unreadable();
        }
        Angle first = angles.get(0);
        Angle second = angles.get(1);
        if (first.isLongitude() || second.isLatitude()) {
            if (first.isLatitude() || second.isLongitude()) {
                throw new IllegalArgumentException(
                        "Both numbers have a letter of the same kind: one needs N or S, the other E or W.");
            }
            return new Position(second.degrees(), first.degrees());
        }
        return new Position(first.degrees(), second.degrees());
    }

    /** Reads latitude and longitude that stand in two fields or columns; letters may show that they are swapped. */
    public static Position parse(String latitude, String longitude) {
        if (latitude.length() > LONGEST || longitude.length() > LONGEST) {
            throw unreadable();
        }
        return parse(one(latitude) + " ; " + one(longitude));
    }

    /** One field holds one number, so a comma in it is a decimal comma. */
    private static String one(String text) {
        return text.strip().replace(',', '.');
    }

    /** A comma between digits is a decimal comma if there is another separator, else it may separate the two numbers. */
    private static String decimalPoints(String text) {
        boolean points = text.indexOf('.') >= 0;
        long commas = COMMA_DECIMAL.matcher(text).results().count();
        boolean separated = text.matches(".*(;|/|\\||,\\s|\\s,|[NSEW]).*") || text.matches(".*\\d\\s+[+-]?\\d.*");
        if (points || commas == 0 || (commas == 1 && !separated)) {
            return text;
        }
        if (commas == 3 && !separated) {
            Matcher matcher = COMMA_DECIMAL.matcher(text);
            int[] at = matcher.results().mapToInt(r -> r.start()).toArray();
            StringBuilder mended = new StringBuilder(text);
            mended.setCharAt(at[0], '.');
            mended.setCharAt(at[1], ';');
            mended.setCharAt(at[2], '.');
            return mended.toString();
        }
        return COMMA_DECIMAL.matcher(text).replaceAll(".");
    }

    private static List<String> tokens(String text) {
        String spaced = MARKS.matcher(withoutMarkLetters(text)).replaceAll(" ");
        List<String> tokens = new ArrayList<>();
        Matcher matcher = TOKEN.matcher(spaced);
        int at = 0;
        while (matcher.find()) {
            if (!spaced.substring(at, matcher.start()).isBlank()) {
                throw unreadable();
            }
            tokens.add(matcher.group());
            at = matcher.end();
        }
        if (!spaced.substring(at).isBlank()) {
            throw unreadable();
        }
        return tokens;
    }

    private static String withoutMarkLetters(String text) {
        return text.replaceAll("(?<=\\d)\\s*(DEG|D|MIN|M|SEC)(?![A-Z])\\.?", " ");
    }

    private static IllegalArgumentException unreadable() {
        return new IllegalArgumentException(
                "This position cannot be read. Write it like -45.0312, 168.6626 or 45°01'52\"S 168°39'45\"E.");
    }

    /** One angle: degrees, minutes, seconds and its letter, blank if it has none. */
    private record Angle(double degrees, String letter) {

        boolean isLatitude() {
            return letter.equals("N") || letter.equals("S");
        }

        boolean isLongitude() {
            return letter.equals("E") || letter.equals("W");
        }

        static List<Angle> read(List<String> tokens) {
            List<List<String>> groups = split(tokens);
            if (groups.size() == 1) {
                groups = halved(groups.get(0));
            }
            return groups.stream().map(Angle::of).toList();
        }

        private static List<List<String>> split(List<String> tokens) {
            boolean lettersFirst = !tokens.isEmpty() && isLetter(tokens.get(0));
            List<List<String>> groups = new ArrayList<>(List.of(new ArrayList<>()));
            for (String token : tokens) {
                List<String> group = groups.get(groups.size() - 1);
                if (",;/|".contains(token)) {
                    groups.add(new ArrayList<>());
                } else if (isLetter(token) && lettersFirst && !group.isEmpty()) {
                    groups.add(new ArrayList<>(List.of(token)));
                } else {
                    group.add(token);
                    if (isLetter(token) && !lettersFirst) {
                        groups.add(new ArrayList<>());
                    }
                }
            }
            groups.removeIf(List::isEmpty);
            return groups;
        }

        private static List<List<String>> halved(List<String> numbers) {
            int n = numbers.size();
            if (n % 2 != 0 || n > 6) {
                throw unreadable();
            }
            return List.of(numbers.subList(0, n / 2), numbers.subList(n / 2, n));
        }

        private static Angle of(List<String> group) {
            List<String> numbers = group.stream().filter(t -> !isLetter(t)).toList();
            List<String> letters = group.stream().filter(Angle::isLetter).toList();
            if (numbers.isEmpty() || numbers.size() > 3 || letters.size() > 1) {
                throw unreadable();
            }
            String letter = letters.isEmpty() ? "" : letters.get(0);
            boolean negative = numbers.get(0).startsWith("-");
            double degrees = 0;
            for (int i = numbers.size() - 1; i >= 0; i--) {
                degrees = degrees / 60 + part(numbers, i);
            }
            if (negative && !letter.isEmpty()) {
                throw new IllegalArgumentException("A position has a minus or a letter, not both.");
            }
            return new Angle(negative || letter.equals("S") || letter.equals("W") ? -degrees : degrees, letter);
        }

        private static double part(List<String> numbers, int i) {
            String number = numbers.get(i);
            double value = Math.abs(Double.parseDouble(number));
            boolean last = i == numbers.size() - 1;
            if (i > 0 && (value >= 60 || number.startsWith("-"))) {
                throw new IllegalArgumentException("Minutes and seconds lie between 0 and 60.");
            }
            if (!last && number.contains(".")) {
                throw unreadable();
            }
            return value;
        }

        private static boolean isLetter(String token) {
            return token.length() == 1 && "NSEW".contains(token);
        }
    }
}
