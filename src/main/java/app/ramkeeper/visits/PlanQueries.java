package app.ramkeeper.visits;

import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.PersonId;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads the plan, who is out, and how many calls are open. */
@Repository
class PlanQueries {

    static final String PLANNED = """
            select v.*, s.name as site_name, s.locality,
              (select array_agg(p.name order by vp.lead desc, p.name) from visit_people vp join people p on p.id = vp.person_id
                where vp.visit_id = v.id) as people,
              (select array_agg(k.name order by k.name) from visit_tasks t join task_kinds k on k.id = t.task_kind_id
                where t.visit_id = v.id) as tasks,
              (select count(*) from visit_attempts a where a.visit_id = v.id) as attempts
            from visits v join sites s on s.id = v.site_id
            """;

    private final JdbcClient jdbc;
    private final Clock clock;

    PlanQueries(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    List<PlannedVisit> plannedFor(PersonId person, LocalDate day) {
        return jdbc.sql(PLANNED + """
                        where v.state = 'PLANNED' and v.planned_on = :day
                          and exists (select 1 from visit_people vp where vp.visit_id = v.id and vp.person_id = :person)
                        order by v.planned_from nulls last, s.name, v.id""")
                .param("day", day)
                .param("person", person.value())
                .query(PlanQueries::planned)
                .list();
    }

    List<PersonOut> notBack() {
        Instant now = clock.instant();
        return jdbc.sql("""
                        select d.*, p.name, p.phone, s.name as site_name from field_days d join people p on p.id = d.person_id
                        left join sites s on s.id = d.last_site_id where d.back_at is null order by d.due_back_at, p.name""").query((row, n) -> out(row, now)).list();
    }

    private static PersonOut out(ResultSet row, Instant now) throws SQLException {
        UUID site = row.getObject("last_site_id", UUID.class);
        Instant due = row.getTimestamp("due_back_at").toInstant();
        return new PersonOut(
                new PersonId(row.getObject("person_id", UUID.class)),
                row.getString("name"),
                row.getString("phone"),
                row.getTimestamp("left_at").toInstant(),
                due,
                due.isBefore(now),
                site == null ? null : new SiteId(site),
                row.getString("site_name"));
    }

    int openCalls() {
        return jdbc.sql("select count(*) from calls where closed_at is null")
                .query(Integer.class)
                .single();
    }

    static PlannedVisit planned(ResultSet row, int n) throws SQLException {
        return new PlannedVisit(
                new VisitId(row.getObject("id", UUID.class)),
                new SiteId(row.getObject("site_id", UUID.class)),
                row.getString("site_name"),
                row.getString("locality"),
                VisitKind.valueOf(row.getString("kind")),
                VisitState.valueOf(row.getString("state")),
                row.getObject("planned_on", LocalDate.class),
                row.getObject("planned_from", LocalTime.class),
                row.getInt("minutes"),
                strings(row, "people"),
                strings(row, "tasks"),
                Answer.valueOf(row.getString("answer")),
                row.getInt("attempts"),
                row.getBoolean("office_must_ring"),
                row.getString("note"));
    }

    static List<String> strings(ResultSet row, String column) throws SQLException {
        java.sql.Array array = row.getArray(column);
        return array == null ? List.of() : List.of((String[]) array.getArray());
    }
}
