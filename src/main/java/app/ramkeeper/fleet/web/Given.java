package app.ramkeeper.fleet.web;

import app.ramkeeper.shared.Conflict;
import org.jspecify.annotations.Nullable;

/** What a form must give for one of its uses. */
final class Given {

    private Given() {}

    static <T> T need(@Nullable T value, String sentence) {
        if (value == null) {
            throw new Conflict(sentence);
        }
        return value;
    }
}
