package app.ramkeeper.exchange;

import java.text.Normalizer;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Compares names as the database's {@code folded()} does for the letters that matter: without accents and capitals. */
final class Fold {

    private static final Pattern MARKS = Pattern.compile("\\p{M}+");

    private Fold() {}

    /** The same for names of people, however many spaces stand between their words. */
    static String name(String name) {
        return of(name).strip().replaceAll("\\s+", " ");
    }

    static String of(@Nullable String text) {
        return text == null
                ? ""
                : MARKS.matcher(Normalizer.normalize(text, Normalizer.Form.NFD))
                        .replaceAll("")
                        .toLowerCase(Locale.ROOT);
    }
}
