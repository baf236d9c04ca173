package app.ramkeeper.rounds.week;

import app.ramkeeper.visits.VisitRetasked;
import java.time.Clock;
import java.time.LocalDate;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * What the office puts on a visit or takes off it counts in the plan of the week at once, so that publishing does not undo it. What
 * would only ride along with a visit that is not published yet stays.
 */
@Component
class TasksInPlan {

    private static final String STANDING = """
            from week_stops w join week_plans p on p.id = w.plan_id where w.visit_id = :visit and p.monday > :today::date - 7""";

    private final JdbcClient jdbc;
    private final Clock clock;

    TasksInPlan(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    @EventListener
    void on(VisitRetasked changed) {
        run("""
                delete from week_stop_tasks t where t.stop_id in (select w.id %s and w.published_on is not null)
                  and not exists (select from visit_tasks v where v.visit_id = :visit and v.task_id = t.task_id)""", changed);
        run("""
                insert into week_stop_tasks (stop_id, task_id, install_id, task_kind_id)
                  select stop.id, v.task_id, v.install_id, v.task_kind_id from (select w.id %s) stop
                    join visit_tasks v on v.visit_id = :visit join service_tasks s on s.id = v.task_id
                  on conflict do nothing""", changed);
    }

    private void run(String sql, VisitRetasked changed) {
        jdbc.sql(sql.formatted(STANDING))
                .param("visit", changed.visit().value())
                .param("today", LocalDate.now(clock))
                .update();
    }
}
