package app.ramkeeper.rounds.week;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** The plan of one week. */
public record WeekPlan(
        UUID id,
        LocalDate monday,
        int version,
        @Nullable Integer publishedVersion,
        @Nullable Instant publishedAt,
        @Nullable Instant firstPublishedAt,
        @Nullable String travelNote) {

    public LocalDate sunday() {
        return monday.plusDays(6);
    }

    public List<LocalDate> days() {
        return IntStream.range(0, 7).mapToObj(monday::plusDays).toList();
    }

    /** True if something was changed since it was published. */
    public boolean ahead() {
        return publishedVersion != null && publishedVersion < version;
    }
}
