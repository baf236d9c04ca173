package app.ramkeeper.web;

import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What became of a step, for the next page to say: a flash attribute of the name {@code saved}.
 *
 * @param key of a bundle
 * @param with what stands in the sentence
 */
public record Saved(String key, List<String> with) implements Serializable {

    public static Saved of(String key, @Nullable Object... with) {
        return new Saved(key, Arrays.stream(with).map(Saved::text).toList());
    }

    /** A sentence that a service has put together and keeps. */
    public static Saved said(String sentence) {
        return of("layout.said", sentence);
    }

    private static String text(@Nullable Object value) {
        return value instanceof Integer number ? String.format(Locale.UK, "%,d", number) : String.valueOf(value);
    }
}
