package app.ramkeeper.upkeep.rules;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A time in which a ram does not beat.
 *
 * @param until the first day it beats again; null while nobody knows
 * @param asleep dormant for the season or without water: its tasks sleep; a mere stop is a failure and they do not
 */
public record Idle(LocalDate from, @Nullable LocalDate until, boolean asleep) {

    public Idle {
        if (until != null && until.isBefore(from)) {
            throw new IllegalArgumentException("An idle time ends before it begins: " + from + " to " + until);
        }
    }
}
