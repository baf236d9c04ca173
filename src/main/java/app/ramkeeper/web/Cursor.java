package app.ramkeeper.web;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The last row's sort keys, packed for the address of the next page. */
public final class Cursor {

    private static final String SEPARATOR = "\u001F";

    private Cursor() {}

    /** Packs the keys of the last row shown. */
    public static String of(Object... keys) {
        StringBuilder joined = new StringBuilder();
        for (Object key : keys) {
            joined.append(joined.isEmpty() ? "" : SEPARATOR).append(key);
        }
        return Base64.getUrlEncoder()
                .withoutPadding()
                .encodeToString(joined.toString().getBytes(StandardCharsets.UTF_8));
    }

    /** Unpacks a cursor of so many keys; a broken one is as good as none: the first page. */
    public static Optional<List<String>> read(@Nullable String cursor, int keys) {
        if (cursor == null || cursor.length() > 2000) {
            return Optional.empty();
        }
        try {
            String joined = new String(Base64.getUrlDecoder().decode(cursor), StandardCharsets.UTF_8);
            List<String> parts = List.of(joined.split(SEPARATOR, -1));
            return parts.size() == keys && joined.indexOf('\0') < 0 ? Optional.of(parts) : Optional.empty();
        } catch (IllegalArgumentException broken) {
            return Optional.empty();
        }
    }
}
