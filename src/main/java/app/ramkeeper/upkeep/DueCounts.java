package app.ramkeeper.upkeep;

/** Counts for the first pages; each is capped at one more than 1000. */
public record DueCounts(long overdue, long dueNow, long thisWeek, long unknown) {}
