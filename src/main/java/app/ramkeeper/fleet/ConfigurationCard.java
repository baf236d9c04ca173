package app.ramkeeper.fleet;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** A configuration with its days and its baseline; until is the first day of the next one. */
public record ConfigurationCard(
        ConfigurationId id,
        InstallId install,
        @Nullable LocalDate from,
        @Nullable LocalDate until,
        @Nullable String reason,
        ConfigurationDetails details,
        @Nullable BaselineDetails baseline) {

    public boolean inForceOn(LocalDate day) {
        return (from == null || !day.isBefore(from)) && (until == null || day.isBefore(until));
    }
}
