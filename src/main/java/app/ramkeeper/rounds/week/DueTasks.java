package app.ramkeeper.rounds.week;

import java.time.LocalDate;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Service tasks of ours that are due, seen from a week. */
@Component
class DueTasks {

    private final JdbcClient jdbc;

    /** Whether a task t of ours is open to a week and its window begins by a day; both in SQL. */
    static String isOpen(String sunday, String by) {
        return """
                t.ended_on is null and t.done_by = 'US' and t.due_on is not null and (t.asleep_since is null or t.wakes_on <= %s)
                  and t.waiting in ('OURS', 'PARTS') and t.window_from <= %s""".formatted(sunday, by);
    }

    DueTasks(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Tasks whose window opens by a day, and that no visit of another week will do. */
    List<DueRow> opening(LocalDate monday, LocalDate by) {
        return jdbc.sql("""
                        select t.id as task_id, i.site_id, s.name as site, t.install_id, t.pump_id, k.id as kind_id, k.name as kind, k.minutes, k.crew,
                          k.weight::float8 as weight, t.due_on, t.window_from, t.window_until,
                          v.id as visit_id, s.latitude, s.longitude
                        from service_tasks t join installs i on i.id = t.install_id join sites s on s.id = i.site_id
                          join task_kinds k on k.id = t.task_kind_id
                          left join lateral (select v.id, v.planned_on from visit_tasks vt join visits v on v.id = vt.visit_id
                            where vt.task_id = t.id and v.state = 'PLANNED' order by v.planned_on nulls last limit 1) v on true
                        where\s""" + isOpen(":sunday", ":by") + """
                          and s.merged_into is null and (v.id is null or v.planned_on is null or v.planned_on between :monday and :sunday)
                        order by i.site_id, t.window_until, t.id""")
                .param("monday", monday)
                .param("sunday", monday.plusDays(6))
                .param("by", by)
                .query(DueRow.class)
                .list();
    }
}
