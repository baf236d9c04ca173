package app.ramkeeper.rounds.out;

import java.nio.charset.StandardCharsets;

/** Folds the lines of a calendar at 75 octets and between two characters, as RFC 5545, 3.1 has it; the library counts characters. */
final class Folding {

    private static final int LONGEST = 75;

    private Folding() {}

    static byte[] of(String lines) {
        StringBuilder folded = new StringBuilder(lines.length() + lines.length() / 16);
        int octets = 0;
        for (int at = 0; at < lines.length(); at += Character.charCount(lines.codePointAt(at))) {
            int character = lines.codePointAt(at);
            if (character == '\n') {
                octets = 0;
            } else if (character != '\r') {
                int more = octets(character);
                if (octets + more > LONGEST) {
                    folded.append("\r\n ");
                    octets = 1;
                }
                octets += more;
            }
            folded.appendCodePoint(character);
        }
        return folded.toString().getBytes(StandardCharsets.UTF_8);
    }

    /** How many octets a character takes in UTF-8. */
    private static int octets(int character) {
        if (character < 0x80) {
            return 1;
        }
        if (character < 0x800) {
            return 2;
        }
        return Character.isBmpCodePoint(character) ? 3 : 4;
    }
}
