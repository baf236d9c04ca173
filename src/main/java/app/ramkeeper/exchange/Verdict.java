package app.ramkeeper.exchange;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the dry run says of a row.
 *
 * @param thing the reference or, without one, what else names what the row is about
 * @param serial the pump's serial
 * @param content a hash of all that the row says
 */
record Verdict(
        int line,
        RowState state,
        List<Problem> problems,
        @Nullable String thing,
        @Nullable String serial,
        @Nullable String content) {}
