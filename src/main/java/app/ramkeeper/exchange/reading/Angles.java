package app.ramkeeper.exchange.reading;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads one half of a position: decimal degrees, degrees-minutes or degrees-minutes-seconds, with or without letter. */
public final class Angles {

    /**
     * An angle as written.
     *
     * @param degrees signed decimal degrees
     * @param axis 'N' for a latitude, 'E' for a longitude, blank if no letter says
     */
    public record Angle(double degrees, char axis) {}

    private static final String NUMBER = "(\\d{1,3}(?:[.,]\\d+)?)";
    private static final Pattern ANGLE = Pattern.compile(
            "([NSEW])?\\s*([-−+])?\\s*" + NUMBER
                    + "(?:\\s*[°º:d\\s]\\s*(\\d{1,2}(?:[.,]\\d+)?)?(?:\\s*['’′:m\\s]\\s*(?:(\\d{1,2}(?:[.,]\\d+)?)\\s*(?:[\"”″]|'')?)?)?)?\\s*([NSEW])?");

    private Angles() {}

    /** Reads an angle; empty if the text is none. */
    public static Optional<Angle> read(String text) {
        Matcher m = ANGLE.matcher(
                text.strip().toUpperCase(Locale.ROOT).replace('D', 'd').replace('M', 'm'));
        if (text.length() > 60 || !m.matches()) {
            return Optional.empty();
        }
        String letter = m.group(1) != null ? m.group(1) : m.group(6);
        double minutes = number(m.group(4));
        double seconds = number(m.group(5));
        boolean both = m.group(1) != null && m.group(6) != null;
        if (minutes >= 60 || seconds >= 60 || both || (letter != null && m.group(2) != null && "SW".contains(letter))) {
            return Optional.empty();
        }
        double size = number(m.group(3)) + minutes / 60 + seconds / 3600;
        boolean negative = (m.group(2) != null && !m.group(2).equals("+")) || "S".equals(letter) || "W".equals(letter);
        char axis = letter == null ? ' ' : "NS".contains(letter) ? 'N' : 'E';
        return Optional.of(new Angle(negative ? -size : size, axis));
    }

    /** Splits a cell that holds both halves: "-45.03, 169.20", "45°02'S 169°12'E". */
    public static Optional<String[]> split(String text) {
        Matcher letters = Pattern.compile("(.*?[NSns])[\\s,;/]+(.*?[EWew])|(.*?[EWew])[\\s,;/]+(.*?[NSns])")
                .matcher(text.strip());
        if (letters.matches()) {
            int from = letters.group(1) != null ? 1 : 3;
            return Optional.of(new String[] {letters.group(from), letters.group(from + 1)});
        }
        Matcher plain = Pattern.compile("\\s*(\\S+?)\\s*(?:[;/]|,\\s|,(?=[-−]?\\d+\\.)|\\s)\\s*(\\S+)\\s*")
                .matcher(text);
        return plain.matches() ? Optional.of(new String[] {plain.group(1), plain.group(2)}) : Optional.empty();
    }

    private static double number(String text) {
        return text == null ? 0 : Double.parseDouble(text.replace(',', '.'));
    }
}
