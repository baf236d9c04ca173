package app.ramkeeper.identity.trail;

import app.ramkeeper.identity.ForAdministrator;
import app.ramkeeper.identity.trail.Entry.Change;
import app.ramkeeper.web.Cursor;
import app.ramkeeper.web.Slice;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/** Reads the trail of changes, newest first, by key. */
@Service
@Transactional(readOnly = true)
@ForAdministrator
class Trail {

    private static final int PAGE = 50;
    private static final String NOTHING = "–";
    private static final String WHERE = """
            where (cast(:table as text) is null or table_name = :table)
              and (cast(:row as text) is null or row_id = :row)
              and (cast(:who as text) is null or actor = :who)
              and (cast(:from as timestamptz) is null or at >= :from)
              and (cast(:until as timestamptz) is null or at < :until)
            """;

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final Clock clock;

    Trail(JdbcClient jdbc, JsonMapper json, Clock clock) {
        this.jdbc = jdbc;
        this.json = json;
        this.clock = clock;
    }

    Slice<Entry> page(TrailFilter filter, @Nullable String after) {
        Long before = Cursor.read(after, 1).flatMap(keys -> number(keys.get(0))).orElse(Long.MAX_VALUE);
        List<Entry> rows = new ArrayList<>(bound(
                        "select id, at, actor, source, table_name, row_id, operation, old_values, new_values from audit_entries "
                                + WHERE + " and id < :before order by id desc limit " + (PAGE + 1),
                        filter)
                .param("before", before)
                .query(this::entry)
                .list());
        String next = null;
        if (rows.size() > PAGE) {
            rows.remove(PAGE);
            next = Cursor.of(rows.get(PAGE - 1).id());
        }
        return new Slice<>(rows, next, count(filter));
    }

    /** The tables that keep a trail, for the drop-down; few and known to the database, so no row is read. */
    List<String> tables() {
        return jdbc.sql("""
                        select distinct c.relname from pg_trigger t join pg_class c on c.oid = t.tgrelid
                        where t.tgname = 'tr_audit' order by c.relname""").query(String.class).list();
    }

    private long count(TrailFilter filter) {
        return bound(
                        "select count(*) from (select 1 from audit_entries " + WHERE + " limit " + (Slice.CAP + 1)
                                + ") as counted",
                        filter)
                .query(Long.class)
                .single();
    }

    private JdbcClient.StatementSpec bound(String sql, TrailFilter filter) {
        LocalDate until = filter.until();
        return jdbc.sql(sql)
                .param("table", filter.table())
                .param("row", filter.row())
                .param("who", filter.who())
                .param("from", startOf(filter.from()))
                .param("until", startOf(until == null ? null : until.plusDays(1)));
    }

    private @Nullable OffsetDateTime startOf(@Nullable LocalDate day) {
        return day == null ? null : day.atStartOfDay(clock.getZone()).toOffsetDateTime();
    }

    private Entry entry(ResultSet row, int number) throws SQLException {
        return new Entry(
                row.getLong("id"),
                row.getObject("at", OffsetDateTime.class).toInstant(),
                row.getString("actor"),
                row.getString("source"),
                row.getString("table_name"),
                row.getString("row_id"),
                row.getString("operation"),
                changes(values(row.getString("old_values")), values(row.getString("new_values"))));
    }

    private static List<Change> changes(Map<String, Object> before, Map<String, Object> after) {
        TreeSet<String> fields = new TreeSet<>(before.keySet());
        fields.addAll(after.keySet());
        return fields.stream()
                .map(field -> new Change(field, text(before.get(field)), text(after.get(field))))
                .filter(change -> !change.before().equals(change.after())
                        || !change.before().equals(NOTHING))
                .toList();
    }

    private Map<String, Object> values(@Nullable String stored) {
        return stored == null
                ? Map.of()
                : new TreeMap<>(json.readValue(stored, new TypeReference<Map<String, Object>>() {}));
    }

    private static String text(@Nullable Object value) {
        String text = value == null ? NOTHING : value.toString();
        return text.length() <= 300 ? text : text.substring(0, 300) + " …";
    }

    private static Optional<Long> number(String text) {
        return text.matches("\\d{1,18}") ? Optional.of(Long.valueOf(text)) : Optional.empty();
    }
}
