package app.ramkeeper.exchange.reading;

import java.nio.charset.Charset;

/** How a text table is written: characters, bytes before the first one, separator. */
public record Dialect(Charset charset, int skip, char separator) {

    /** The way of writing in words, for the preview. */
    public String words() {
        String mark = skip > 0 ? " with byte order mark" : "";
        return "text, " + charset.displayName() + mark + ", separated by " + separatorWord();
    }

    private String separatorWord() {
        return switch (separator) {
            case ';' -> "semicolons";
            case '\t' -> "tabs";
            case '|' -> "upright bars";
            default -> "commas";
        };
    }
}
