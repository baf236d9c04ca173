package app.ramkeeper.shared;

import org.jspecify.annotations.Nullable;

/** Cleans text that people type, paste or import. */
public final class Text {

    private Text() {}

    /**
     * Returns the text without direction controls (U+202A-202E, U+2066-2069, which reorder neighbouring text), with
     * line ends as LF and blanks at both ends removed.
     *
     * @throws IllegalArgumentException if it holds NUL or another control character than tab and line end
     */
    public static @Nullable String clean(@Nullable String text) {
        if (text == null) {
            return null;
        }
        StringBuilder clean = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '\r') {
                clean.append(i + 1 < text.length() && text.charAt(i + 1) == '\n' ? "" : "\n");
            } else if (!isDirectionControl(c)) {
                clean.append(allowed(c));
            }
        }
        return clean.toString().strip();
    }

    private static char allowed(char c) {
        if (Character.isISOControl(c) && c != '\t' && c != '\n') {
            throw new IllegalArgumentException("The text holds a control character (code %d).".formatted((int) c));
        }
        return c;
    }

    private static boolean isDirectionControl(char c) {
        return (c >= '\u202A' && c <= '\u202E') || (c >= '\u2066' && c <= '\u2069');
    }
}
