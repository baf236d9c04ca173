package app.ramkeeper.rounds.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A second reader of calendars, straight from RFC 5545: lines and folds of 3.1, escapes of 3.3.11. */
final class PlainCalendar {

    private static final int LONGEST = 75;
    private static final Pattern ESCAPE = Pattern.compile("\\\\(.)");
    /** Name, parameters (a value in quotes may hold a colon), value. */
    private static final Pattern LINE = Pattern.compile("([A-Z-]+)((?:;[A-Z-]+=(?:\"[^\"]*\"|[^;:\"]*))*):(.*)");

    private PlainCalendar() {}

    /** The values of each event by the name of their property. */
    static List<Map<String, String>> events(byte[] calendar) throws CharacterCodingException {
        List<Map<String, String>> events = new ArrayList<>();
        for (String line : unfolded(calendar)) {
            Matcher parts = LINE.matcher(line);
            assertThat(parts.matches()).as(line).isTrue();
            if (line.equals("BEGIN:VEVENT")) {
                events.add(new HashMap<>());
            } else if (!events.isEmpty()) {
                events.get(events.size() - 1)
                        .put(parts.group(1), ESCAPE.matcher(parts.group(3)).replaceAll(PlainCalendar::meant));
            }
        }
        return events;
    }

    private static List<String> unfolded(byte[] calendar) throws CharacterCodingException {
        List<String> lines = new ArrayList<>();
        int from = 0;
        for (int i = 0; i < calendar.length; i++) {
            if (calendar[i] == '\n') {
                assertThat(calendar[i - 1]).as("a line ends in CR LF").isEqualTo((byte) '\r');
                assertThat(i - 1 - from).as("octets of a line").isLessThanOrEqualTo(LONGEST);
                // a decoder of its own for each line throws where a fold cuts a character
                String line = StandardCharsets.UTF_8
                        .newDecoder()
                        .decode(ByteBuffer.wrap(calendar, from, i - 1 - from))
                        .toString();
                if (line.startsWith(" ")) {
                    lines.add(lines.remove(lines.size() - 1) + line.substring(1));
                } else {
                    lines.add(line);
                }
                from = i + 1;
            }
        }
        assertThat(from).as("nothing behind the last line").isEqualTo(calendar.length);
        return lines;
    }

    private static String meant(java.util.regex.MatchResult escape) {
        String sign = escape.group(1);
        return Matcher.quoteReplacement(sign.equalsIgnoreCase("n") ? "\n" : sign);
    }
}
