package app.ramkeeper.fleet;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** Days on which a site is closed, both included. */
public record ClosedPeriod(
        LocalDate from, LocalDate until, @Nullable String reason) {

    public boolean covers(LocalDate day) {
        return !day.isBefore(from) && !day.isAfter(until);
    }
}
