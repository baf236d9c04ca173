package app.ramkeeper.rounds.week;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** When sites may be entered: their access hours by weekday, and closed periods. Times are minutes of the day. */
public final class Hours {

    /** A stretch of a day. */
    public record Window(int from, int until) {}

    /** Access on a weekday, 1 for Monday. */
    public record Access(UUID siteId, int weekday, int from, int until) {}

    /** Days on which nobody may come. */
    public record Closed(
            UUID siteId,
            LocalDate fromDate,
            LocalDate untilDate,
            @Nullable String reason) {}

    private static final Window ALL_DAY = new Window(0, 24 * 60);

    private final Map<UUID, List<Access>> access;
    private final Map<UUID, List<Closed>> closed;

    Hours(Map<UUID, List<Access>> access, Map<UUID, List<Closed>> closed) {
        this.access = access;
        this.closed = closed;
    }

    /** The stretches of a day in which a site is open, earliest first; none if it is closed. */
    public List<Window> on(UUID site, LocalDate day) {
        if (closedOn(site, day) != null) {
            return List.of();
        }
        List<Access> rows = access.get(site);
        if (rows == null) {
            return List.of(ALL_DAY);
        }
        return rows.stream()
                .filter(row -> row.weekday() == day.getDayOfWeek().getValue())
                .map(row -> new Window(row.from(), row.until()))
                .sorted(Comparator.comparingInt(Window::from))
                .toList();
    }

    /** Why a site is closed on a day, in words; null if no closed period holds. */
    public @Nullable String closedOn(UUID site, LocalDate day) {
        return closed.getOrDefault(site, List.of()).stream()
                .filter(c -> !day.isBefore(c.fromDate()) && !day.isAfter(c.untilDate()))
                .map(c -> c.reason() == null ? "closed" : "closed: " + c.reason())
                .findFirst()
                .orElse(null);
    }
}
