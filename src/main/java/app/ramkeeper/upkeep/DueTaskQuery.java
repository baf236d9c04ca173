package app.ramkeeper.upkeep;

import app.ramkeeper.upkeep.rules.DoneBy;
import app.ramkeeper.upkeep.rules.DueDate;
import app.ramkeeper.upkeep.rules.LastDone;
import app.ramkeeper.upkeep.rules.TaskState;
import app.ramkeeper.upkeep.rules.Waiting;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads tasks with the names that pages show; one statement a list. */
@Repository
class DueTaskQuery {

    /** Columns of a row; {@code t} is the task, {@code s} its site. */
    static final String COLUMNS = """
            t.*, s.id as site_id, s.name as site_name, s.locality, d.name as depot_name, i.name as install_name,
            case when p.id is null then null else coalesce(p.serial, m.name, 'pump') end as pump_name, p.model_id,
            k.name as kind_name, k.watched, k.minutes, plan.planned_on, plan.visit_id
            """;

    static final String JOINS = """
            join task_kinds k on k.id = t.task_kind_id
            join installs i on i.id = t.install_id
            join sites s on s.id = i.site_id
            left join depots d on d.id = s.depot_id
            left join pumps p on p.id = t.pump_id
            left join pump_models m on m.id = p.model_id
            left join lateral (select v.planned_on, v.id as visit_id from visit_tasks vt join visits v on v.id = vt.visit_id
                               where vt.task_id = t.id and v.state = 'PLANNED' order by v.planned_on limit 1) plan on true
            """;

    private final JdbcClient jdbc;
    private final Clock clock;

    DueTaskQuery(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    List<DueTask> ofSite(UUID site) {
        return list("i.site_id = ? and t.ended_on is null order by t.due_on nulls last, k.name, i.name", site);
    }

    List<DueTask> ofInstall(UUID install) {
        return list("t.install_id = ? and t.ended_on is null order by t.due_on nulls last, k.name", install);
    }

    List<DueTask> byId(Collection<UUID> ids) {
        return ids.isEmpty()
                ? List.of()
                : list("t.id = any(?) order by s.name, i.name, k.name", ids.toArray(UUID[]::new));
    }

    private List<DueTask> list(String where, Object parameter) {
        LocalDate today = LocalDate.now(clock);
        return jdbc.sql("select " + COLUMNS + " from service_tasks t " + JOINS + " where " + where)
                .param(parameter)
                .query((row, number) -> row(row, today))
                .list();
    }

    static DueTask row(ResultSet row, LocalDate today) throws SQLException {
        DoneBy doneBy = DoneBy.valueOf(row.getString("done_by"));
        LastDone lastDone = LastDone.valueOf(row.getString("last_done_as"));
        DueDate due = new DueDate(date(row, "due_on"), date(row, "window_from"), date(row, "window_until"));
        LocalDate asleepSince = date(row, "asleep_since");
        LocalDate wakesOn = date(row, "wakes_on");
        return new DueTask(
                row.getObject("id", UUID.class),
                row.getObject("site_id", UUID.class),
                row.getString("site_name"),
                row.getString("locality"),
                row.getString("depot_name"),
                row.getObject("install_id", UUID.class),
                row.getString("install_name"),
                row.getObject("pump_id", UUID.class),
                row.getString("pump_name"),
                row.getObject("model_id", UUID.class),
                row.getObject("task_kind_id", UUID.class),
                row.getString("kind_name"),
                row.getBoolean("watched"),
                row.getInt("minutes"),
                TaskState.of(doneBy, lastDone, due, asleepSince, wakesOn, today),
                doneBy,
                due.on(),
                due.windowFrom(),
                due.windowUntil(),
                date(row, "last_done_on"),
                lastDone,
                date(row, "counting_from"),
                date(row, "look_again_on"),
                row.getString("brought_forward_reason"),
                asleepSince,
                wakesOn,
                Waiting.valueOf(row.getString("waiting")),
                date(row, "waiting_since"),
                row.getString("waiting_note"),
                date(row, "planned_on"),
                row.getObject("visit_id", UUID.class));
    }

    private static @Nullable LocalDate date(ResultSet row, String column) throws SQLException {
        return row.getObject(column, LocalDate.class);
    }
}
