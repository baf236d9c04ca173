package app.ramkeeper.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One page of a list that is read by key, not by offset.
 *
 * @param rows what the page shows
 * @param next the cursor of the next page, to be put into the address as {@code after=}; null on the last page
 * @param count how many rows match, at most one more than {@link #CAP}
 */
public record Slice<T>(List<T> rows, @Nullable String next, long count) {

    /** Counting stops here; pages then say "1000+". */
    public static final int CAP = 1000;

    /** "37" or "1000+". */
    public String countText() {
        return count > CAP ? CAP + "+" : Long.toString(count);
    }

    public boolean isEmpty() {
        return rows.isEmpty();
    }
}
