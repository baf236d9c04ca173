package app.ramkeeper.exchange;

import app.ramkeeper.exchange.reading.DateOrder;
import app.ramkeeper.exchange.reading.DecimalMark;
import app.ramkeeper.exchange.reading.Evidence;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.web.Cursor;
import app.ramkeeper.web.Slice;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/** Keeps imports and remembered mappings. */
@Repository
class ImportStore {

    private static final String SELECT = """
            select i.*, p.name as starter,
              (select max(same.finished_at) from imports same where same.sha256 = i.sha256 and same.id <> i.id
                and same.state = 'APPLIED' and same.created_at < i.created_at) as same_since
            from imports i join people p on p.id = i.started_by""";

    private final JdbcClient jdbc;
    private final JsonMapper json;

    ImportStore(JdbcClient jdbc, JsonMapper json) {
        this.jdbc = jdbc;
        this.json = json;
    }

    void add(ImportId id, ImportKind kind, String fileName, byte[] sha256, CurrentUser user) {
        jdbc.sql("""
                        insert into imports (id, kind, file_name, sha256, how_read, headings, comma_seen, state, started_by, actor)
                        values (:id, :kind, :name, :sha, '', '[]', false, 'STAGED', :person, :actor)""")
                .param("id", id.value())
                .param("kind", kind.name())
                .param("name", fileName)
                .param("sha", sha256)
                .param("person", user.person())
                .param("actor", user.login())
                .update();
    }

    void describe(ImportId id, String howRead, List<String> headings, Evidence evidence) {
        jdbc.sql("""
                        update imports set how_read = :how, headings = :headings::jsonb, order_seen = :order, open_date = :date,
                          comma_seen = :comma, open_number = :number where id = :id""")
                .param("id", id.value())
                .param("how", howRead)
                .param("headings", json.writeValueAsString(headings))
                .param("order", evidence.order().map(Enum::name).orElse(null))
                .param("date", evidence.ambiguousDate().orElse(null))
                .param("comma", evidence.decimalComma())
                .param("number", evidence.ambiguousNumber().orElse(null))
                .update();
    }

    Import get(ImportId id) {
        return jdbc.sql(SELECT + " where i.id = :id")
                .param("id", id.value())
                .query(this::row)
                .optional()
                .orElseThrow(() -> new Missing("import", id));
    }

    /** The person who started it. */
    PersonId starter(ImportId id) {
        return new PersonId(jdbc.sql("select started_by from imports where id = :id")
                .param("id", id.value())
                .query(UUID.class)
                .single());
    }

    /** Locks the import until the transaction ends. */
    ImportState lock(ImportId id) {
        return jdbc.sql("select state from imports where id = :id for update")
                .param("id", id.value())
                .query((row, n) -> ImportState.valueOf(row.getString(1)))
                .optional()
                .orElseThrow(() -> new Missing("import", id));
    }

    boolean isStopWanted(ImportId id) {
        return jdbc.sql("select stop_wanted from imports where id = :id")
                .param("id", id.value())
                .query(Boolean.class)
                .single();
    }

    void moveTo(ImportId id, ImportState state, @Nullable String remark) {
        jdbc.sql("""
                        update imports set state = :state, remark = :remark, stop_wanted = false,
                          finished_at = case when :done then now() else finished_at end where id = :id""")
                .param("id", id.value())
                .param("state", state.name())
                .param("remark", remark)
                .param("done", !state.isWorking() && state != ImportState.STAGED)
                .update();
    }

    void wantStop(ImportId id) {
        jdbc.sql("update imports set stop_wanted = true where id = :id and state in ('CHECKING', 'APPLYING')")
                .param("id", id.value())
                .update();
    }

    void map(ImportId id, Mapping mapping) {
        jdbc.sql("update imports set mapping = :map::jsonb, date_order = :order, decimal_mark = :mark where id = :id")
                .param("id", id.value())
                .param("map", json.writeValueAsString(mapping.columns()))
                .param("order", name(mapping.order()))
                .param("mark", name(mapping.mark()))
                .update();
    }

    void remember(UUID id, ImportKind kind, List<String> headings, Mapping mapping) {
        jdbc.sql("""
                        insert into column_mappings (id, kind, headings, mapping, date_order, decimal_mark)
                        values (:id, :kind, :headings, :map::jsonb, :order, :mark)
                        on conflict (kind, headings) do update
                          set mapping = excluded.mapping, date_order = excluded.date_order, decimal_mark = excluded.decimal_mark""")
                .param("id", id)
                .param("kind", kind.name())
                .param("headings", String.join("\u001F", headings))
                .param("map", json.writeValueAsString(mapping.columns()))
                .param("order", name(mapping.order()))
                .param("mark", name(mapping.mark()))
                .update();
    }

    Optional<Mapping> remembered(ImportKind kind, List<String> headings) {
        return jdbc.sql(
                        "select mapping, date_order, decimal_mark from column_mappings where kind = :kind and headings = :headings")
                .param("kind", kind.name())
                .param("headings", String.join("\u001F", headings))
                .query((row, n) -> mapping(row))
                .optional();
    }

    Slice<Import> list(@Nullable String after) {
        List<String> keys = Cursor.read(after, 2)
                .filter(ImportStore::isCursor)
                .orElse(List.of("9999-01-01T00:00:00Z", "ffffffff-ffff-ffff-ffff-ffffffffffff"));
        List<Import> found = jdbc.sql(
                        SELECT
                                + " where (i.created_at, i.id) < (:at::timestamptz, :id::uuid) order by i.created_at desc, i.id desc limit 31")
                .param("at", keys.get(0))
                .param("id", keys.get(1))
                .query(this::row)
                .list();
        List<Import> shown = found.subList(0, Math.min(30, found.size()));
        Import last = found.size() > 30 ? shown.get(29) : null;
        return new Slice<>(shown, last == null ? null : Cursor.of(last.createdAt(), last.id()), found.size());
    }

    /** How many rows of these imports still have problems; of those that have any. */
    Map<ImportId, Integer> withProblems(List<ImportId> ids) {
        Map<ImportId, Integer> found = new HashMap<>();
        jdbc.sql("""
                        select import_id, count(*)::int as rows from import_rows
                        where import_id = any(:ids) and state = 'PROBLEM' group by import_id""")
                .param("ids", ids.stream().map(ImportId::value).toArray(UUID[]::new))
                .query((row, n) -> found.put(new ImportId(row.getObject("import_id", UUID.class)), row.getInt("rows")))
                .list();
        return found;
    }

    private static boolean isCursor(List<String> keys) {
        try {
            java.time.Instant.parse(keys.get(0));
            UUID.fromString(keys.get(1));
            return true;
        } catch (RuntimeException broken) {
            return false;
        }
    }

    Counts counts(ImportId id) {
        Map<RowState, Integer> counts = new EnumMap<>(RowState.class);
        jdbc.sql("select state, count(*) as rows from import_rows where import_id = :id group by state")
                .param("id", id.value())
                .query((row, n) -> counts.put(RowState.valueOf(row.getString("state")), row.getInt("rows")))
                .list();
        return new Counts(counts);
    }

    private Import row(ResultSet row, int n) throws SQLException {
        String order = row.getString("order_seen");
        Timestamp finished = row.getTimestamp("finished_at");
        Timestamp same = row.getTimestamp("same_since");
        return new Import(
                new ImportId(row.getObject("id", UUID.class)),
                ImportKind.valueOf(row.getString("kind")),
                row.getString("file_name"),
                row.getString("how_read"),
                json.readValue(row.getString("headings"), new TypeReference<List<String>>() {}),
                order == null ? null : DateOrder.valueOf(order),
                row.getString("open_date"),
                row.getBoolean("comma_seen"),
                row.getString("open_number"),
                row.getString("mapping") == null ? null : mapping(row),
                ImportState.valueOf(row.getString("state")),
                row.getBoolean("stop_wanted"),
                row.getString("remark"),
                row.getString("starter"),
                row.getString("actor"),
                row.getTimestamp("created_at").toInstant(),
                finished == null ? null : finished.toInstant(),
                same == null ? null : same.toInstant());
    }

    private Mapping mapping(ResultSet row) throws SQLException {
        String order = row.getString("date_order");
        String mark = row.getString("decimal_mark");
        return new Mapping(
                json.readValue(row.getString("mapping"), new TypeReference<Map<String, Integer>>() {}),
                order == null ? null : DateOrder.valueOf(order),
                mark == null ? null : DecimalMark.valueOf(mark));
    }

    private static @Nullable String name(@Nullable Enum<?> value) {
        return value == null ? null : value.name();
    }
}
