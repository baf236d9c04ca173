package app.ramkeeper.visits.calls;

import app.ramkeeper.visits.Symptom;
import app.ramkeeper.web.Cursor;
import app.ramkeeper.web.Slice;
import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads calls. */
@Repository
class CallQueries {

    private static final int PAGE = 50;
    private static final int MOST_OPEN = 200;
    private static final String LINE = """
            select c.*, coalesce(s.name, c.place_text) as place, v.planned_on, v.state as visit_state,
              c.received_at + make_interval(mins => (60 * c.water_hours_left)::int) as dry_at
            from calls c left join sites s on s.id = c.site_id left join visits v on v.id = c.visit_id
            """;
    // Who has no visit yet comes first, then whoever runs dry first; without hours, somebody dry counts as dry now.
    private static final String URGENT = """
            order by (coalesce(v.state, 'CANCELLED') <> 'CANCELLED'), c.received_at + make_interval(mins => (60 * coalesce(c.water_hours_left,
              case when c.people_dry or c.stock_dry then 0 else 72 end))::int), c.id limit :limit""";

    private final JdbcClient jdbc;
    private final Clock clock;

    CallQueries(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    List<CallLine> open() {
        return jdbc.sql(LINE + " where c.closed_at is null " + URGENT)
                .param("limit", MOST_OPEN)
                .query(CallQueries::line)
                .list();
    }

    List<CallLine> openAt(UUID site) {
        return jdbc.sql(LINE + " where c.closed_at is null and c.site_id = :site " + URGENT)
                .param("site", site)
                .param("limit", 5)
                .query(CallQueries::line)
                .list();
    }

    Slice<CallLine> all(@Nullable String after) {
        Optional<List<String>> keys = Cursor.read(after, 2);
        List<CallLine> rows;
        try {
            rows = jdbc.sql(LINE + """
                             where (:first or c.received_at < :at or (c.received_at = :at and c.id > :id))
                             order by c.received_at desc, c.id limit :limit""")
                    .param("first", keys.isEmpty())
                    .param(
                            "at",
                            keys.map(k -> Instant.parse(k.get(0)))
                                    .orElse(Instant.EPOCH)
                                    .atOffset(ZoneOffset.UTC))
                    .param("id", keys.map(k -> UUID.fromString(k.get(1))).orElse(new UUID(0, 0)))
                    .param("limit", PAGE + 1)
                    .query(CallQueries::line)
                    .list();
        } catch (DateTimeException | IllegalArgumentException brokenCursor) {
            return all(null);
        }
        boolean more = rows.size() > PAGE;
        List<CallLine> shown = more ? rows.subList(0, PAGE) : rows;
        CallLine last = shown.isEmpty() ? null : shown.get(shown.size() - 1);
        long count = jdbc.sql("select count(*) from (select 1 from calls limit 1001) as c")
                .query(Long.class)
                .single();
        return new Slice<>(shown, more && last != null ? Cursor.of(last.receivedAt(), last.id()) : null, count);
    }

    Optional<CallView> view(UUID id) {
        return jdbc.sql("""
                        select c.*, coalesce(s.name, c.place_text) as place, i.name as install_name, t.name as taken_by_name,
                          v.planned_on, v.state as visit_state, r.id as report_id, r.arrived_at, r.attended_on, b.name as closed_by_name,
                          c.received_at + make_interval(mins => (60 * c.water_hours_left)::int) as dry_at
                        from calls c join people t on t.id = c.taken_by left join sites s on s.id = c.site_id
                          left join installs i on i.id = c.install_id left join people b on b.id = c.closed_by
                          left join visits v on v.id = c.visit_id left join current_reports r on r.visit_id = v.id
                        where c.id = :id""").param("id", id).query((row, n) -> view(row)).optional();
    }

    private CallView view(ResultSet row) throws SQLException {
        return new CallView(
                line(row, 0),
                form(row),
                row.getString("install_name"),
                row.getString("taken_by_name"),
                row.getString("visit_state"),
                row.getObject("report_id", UUID.class),
                instant(row, "arrived_at"),
                row.getObject("attended_on", LocalDate.class),
                row.getString("closed_by_name"),
                row.getString("closed_note"));
    }

    private CallForm form(ResultSet row) throws SQLException {
        Instant by = instant(row, "promised_by");
        BigDecimal hours = row.getBigDecimal("water_hours_left");
        return new CallForm(
                row.getObject("id", UUID.class),
                null,
                row.getObject("site_id", UUID.class),
                row.getString("place_text"),
                row.getObject("install_id", UUID.class),
                row.getString("caller"),
                row.getString("phone"),
                Symptom.valueOf(row.getString("symptom")),
                hours == null ? null : new BigDecimal(hours.stripTrailingZeros().toPlainString()),
                row.getBoolean("people_dry"),
                row.getBoolean("stock_dry"),
                row.getString("advice"),
                row.getString("promise"),
                by == null ? null : LocalDateTime.ofInstant(by, clock.getZone()),
                row.getString("note"),
                row.getInt("version"));
    }

    private static CallLine line(ResultSet row, int n) throws SQLException {
        Timestamp received = row.getTimestamp("received_at");
        return new CallLine(
                row.getObject("id", UUID.class),
                received.toInstant(),
                row.getString("caller"),
                row.getString("phone"),
                row.getString("place"),
                row.getObject("site_id", UUID.class),
                Symptom.valueOf(row.getString("symptom")),
                instant(row, "dry_at"),
                row.getBoolean("people_dry"),
                row.getBoolean("stock_dry"),
                instant(row, "promised_by"),
                row.getObject("visit_id", UUID.class),
                row.getObject("planned_on", LocalDate.class),
                instant(row, "closed_at"));
    }

    private static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
        Timestamp at = row.getTimestamp(column);
        return at == null ? null : at.toInstant();
    }
}
