package app.ramkeeper.fleet;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** What an install did from a day on to the day before another; absent days are open. */
public record RunningPeriod(
        RunningState state,
        @Nullable LocalDate from,
        @Nullable LocalDate until,
        @Nullable String reason) {}
