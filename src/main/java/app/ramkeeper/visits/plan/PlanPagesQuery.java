package app.ramkeeper.visits.plan;

import app.ramkeeper.visits.Answer;
import app.ramkeeper.visits.ContactBy;
import app.ramkeeper.visits.VisitKind;
import app.ramkeeper.visits.VisitState;
import app.ramkeeper.web.Cursor;
import app.ramkeeper.web.Slice;
import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads the plan for its pages. */
@Repository
class PlanPagesQuery {

    private static final int PAGE = 50;
    private static final String KEY =
            "(coalesce(v.planned_on, date '9999-12-31'), coalesce(v.planned_from, time '00:00'), v.id)";
    private static final String ROW = """
            select v.*, s.name as site_name, s.locality,
              (select string_agg(p.name, ', ' order by vp.lead desc, p.name) from visit_people vp join people p on p.id = vp.person_id
                where vp.visit_id = v.id) as people,
              (select array_agg(vp.person_id::text order by vp.lead desc) from visit_people vp where vp.visit_id = v.id) as people_ids,
              (select array_agg(i.name || ': ' || k.name order by i.name, k.name) from visit_tasks t
                join task_kinds k on k.id = t.task_kind_id join installs i on i.id = t.install_id where t.visit_id = v.id) as tasks,
              (select count(*) from visit_attempts a where a.visit_id = v.id) as attempts,
              (select r.id from current_reports r where r.visit_id = v.id limit 1) as report
            from visits v join sites s on s.id = v.site_id
            """;
    private static final String WHERE = """
            where (cast(:from as date) is null or v.planned_on >= :from) and (cast(:to as date) is null or v.planned_on <= :to)
              and (cast(:person as uuid) is null or exists (select 1 from visit_people vp where vp.visit_id = v.id and vp.person_id = :person))
              and (cast(:depot as uuid) is null or s.depot_id = :depot) and (cast(:state as text) is null or v.state = :state)
            """;

    private final JdbcClient jdbc;

    PlanPagesQuery(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A visit as its page and the list show it. */
    public record Row(
            UUID id,
            UUID site,
            String siteName,
            @Nullable String locality,
            VisitKind kind,
            VisitState state,
            @Nullable LocalDate on,
            @Nullable LocalTime from,
            int minutes,
            String people,
            List<String> peopleIds,
            List<String> tasks,
            Answer answer,
            int attempts,
            boolean officeMustRing,
            @Nullable String note,
            @Nullable String cancelledReason,
            @Nullable UUID report,
            int version,
            @Nullable LocalDate agreedOn,
            @Nullable LocalTime agreedFrom) {

        /** The customer had agreed to another day or time, and has not been told anew. */
        public boolean hadAgreed() {
            return agreedOn != null && (answer == Answer.NONE || answer == Answer.NO_ANSWER);
        }
    }

    /** One try to reach the customer. */
    public record Attempt(
            Instant at,
            String by,
            ContactBy how,
            Answer outcome,
            @Nullable String note,
            @Nullable LocalDate forDay) {}

    Slice<Row> list(VisitFilter filter, @Nullable String after) {
        List<String> key = Cursor.read(after, 3).orElse(List.of());
        String beyond =
                key.isEmpty() ? "" : " and " + KEY + " > (cast(:on as date), cast(:time as time), cast(:id as uuid))";
        var query = filtered(
                ROW + WHERE + beyond + " order by " + KEY.substring(1, KEY.length() - 1) + " limit " + (PAGE + 1),
                filter);
        if (!key.isEmpty()) {
            query = query.param("on", key.get(0)).param("time", key.get(1)).param("id", key.get(2));
        }
        List<Row> rows = query.query(PlanPagesQuery::row).list();
        long count = filtered(
                        "select count(*) from (select 1 from visits v join sites s on s.id = v.site_id " + WHERE
                                + " limit " + (Slice.CAP + 1) + ") c",
                        filter)
                .query(Long.class)
                .single();
        boolean more = rows.size() > PAGE;
        List<Row> shown = more ? rows.subList(0, PAGE) : rows;
        return new Slice<>(shown, more ? cursor(shown.get(PAGE - 1)) : null, count);
    }

    private static String cursor(Row last) {
        return Cursor.of(
                last.on() == null ? "9999-12-31" : last.on(), last.from() == null ? "00:00" : last.from(), last.id());
    }

    private JdbcClient.StatementSpec filtered(String sql, VisitFilter filter) {
        return jdbc.sql(sql)
                .param("from", filter.from())
                .param("to", filter.to())
                .param("person", filter.person())
                .param("depot", filter.depot())
                .param("state", filter.state() == null ? null : filter.state().name());
    }

    Optional<Row> byId(UUID id) {
        return jdbc.sql(ROW + "where v.id = :id")
                .param("id", id)
                .query(PlanPagesQuery::row)
                .optional();
    }

    List<Attempt> attempts(UUID visit) {
        return jdbc.sql("""
                        select a.*, p.name from visit_attempts a join people p on p.id = a.by_person
                        where a.visit_id = :id order by a.at desc, a.id""")
                .param("id", visit)
                .query((row, n) -> new Attempt(
                        row.getTimestamp("at").toInstant(),
                        row.getString("name"),
                        ContactBy.valueOf(row.getString("how")),
                        Answer.valueOf(row.getString("outcome")),
                        row.getString("note"),
                        row.getObject("for_day", LocalDate.class)))
                .list();
    }

    /** The ids of the tasks that a visit is to answer. */
    List<UUID> tasks(UUID visit) {
        return jdbc.sql("select task_id from visit_tasks where visit_id = :id order by task_id")
                .param("id", visit)
                .query(UUID.class)
                .list();
    }

    private static Row row(ResultSet row, int n) throws SQLException {
        return new Row(
                row.getObject("id", UUID.class),
                row.getObject("site_id", UUID.class),
                row.getString("site_name"),
                row.getString("locality"),
                VisitKind.valueOf(row.getString("kind")),
                VisitState.valueOf(row.getString("state")),
                row.getObject("planned_on", LocalDate.class),
                row.getObject("planned_from", LocalTime.class),
                row.getInt("minutes"),
                row.getString("people") == null ? "" : row.getString("people"),
                strings(row.getArray("people_ids")),
                strings(row.getArray("tasks")),
                Answer.valueOf(row.getString("answer")),
                row.getInt("attempts"),
                row.getBoolean("office_must_ring"),
                row.getString("note"),
                row.getString("cancelled_reason"),
                row.getObject("report", UUID.class),
                row.getInt("version"),
                row.getObject("agreed_on", LocalDate.class),
                row.getObject("agreed_from", LocalTime.class));
    }

    private static List<String> strings(@Nullable Array array) throws SQLException {
        return array == null ? List.of() : List.of((String[]) array.getArray());
    }
}
