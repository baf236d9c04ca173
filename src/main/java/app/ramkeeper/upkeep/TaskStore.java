package app.ramkeeper.upkeep;

import app.ramkeeper.catalogue.Interval;
import app.ramkeeper.upkeep.TaskRow.Dates;
import app.ramkeeper.upkeep.rules.Past;
import app.ramkeeper.upkeep.rules.Waiting;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads tasks for recomputing, a batch at a time, and writes back what changed. */
@Repository
class TaskStore {

    private static final String ROWS = """
            select t.*, s.water_class, p.model_id, i.commissioned_on is null and i.commissioning_known as planned,
                   (select f.from_date from pump_fittings f
                    where f.pump_id = t.pump_id and f.install_id = t.install_id and f.until_date is null) as fitted_on
            from service_tasks t
            join installs i on i.id = t.install_id
            join sites s on s.id = i.site_id
            left join pumps p on p.id = t.pump_id
            """;

    private static final String WRITE = """
            update service_tasks set last_done_on = ?, last_done_as = ?, last_report_id = ?, look_again_on = ?, looked_on = ?,
              brought_forward_to = ?, brought_forward_since = ?, brought_forward_reason = ?,
              due_on = ?, window_from = ?, window_until = ?, asleep_since = ?, wakes_on = ?,
              waiting = ?, waiting_since = ?, waiting_note = ?, waiting_report_id = ?
            where id = ?""";

    private final JdbcClient jdbc;
    private final JdbcTemplate batch;

    TaskStore(JdbcClient jdbc, JdbcTemplate batch) {
        this.jdbc = jdbc;
        this.batch = batch;
    }

    /** All tasks of installs, held until the transaction ends: two reports at once recompute one after the other. */
    List<TaskRow> ofInstalls(Collection<UUID> installs) {
        return jdbc.sql(ROWS + " where t.install_id = any(?) order by t.id for update of t")
                .param(installs.toArray(UUID[]::new))
                .query((row, number) -> row(row))
                .list();
    }

    /** The next tasks of a kind by id, held until the transaction ends. */
    List<TaskRow> ofKindAfter(UUID kind, UUID after, int limit) {
        return jdbc.sql(ROWS + " where t.task_kind_id = ? and t.id > ? order by t.id limit ? for update of t")
                .params(kind, after, limit)
                .query((row, number) -> row(row))
                .list();
    }

    /** The next tasks of a kind by id, only to look at. */
    List<TaskRow> peekOfKindAfter(UUID kind, UUID after, int limit) {
        return jdbc.sql(ROWS
                        + " where t.task_kind_id = ? and t.id > ? and t.ended_on is null and t.done_by = 'US'"
                        + " order by t.id limit ?")
                .params(kind, after, limit)
                .query((row, number) -> row(row))
                .list();
    }

    /** Installs that have a task of a pump that now stands or once stood somewhere. */
    List<UUID> installsOfPumps(Collection<UUID> pumps) {
        return pumps.isEmpty()
                ? List.of()
                : jdbc.sql("select distinct install_id from service_tasks where pump_id = any(?)")
                        .param(pumps.toArray(UUID[]::new))
                        .query(UUID.class)
                        .list();
    }

    List<UUID> installsOfSite(UUID site) {
        return jdbc.sql("select id from installs where site_id = ?")
                .param(site)
                .query(UUID.class)
                .list();
    }

    /** The installs are taken off the register, as if they had never been there. */
    void removeOf(Collection<UUID> installs) {
        jdbc.sql("delete from service_tasks where install_id = any(?)")
                .param(installs.toArray(UUID[]::new))
                .update();
    }

    void write(Map<UUID, Dates> changed) {
        batch.batchUpdate(WRITE, changed.entrySet(), 1000, (statement, entry) -> {
            Dates d = entry.getValue();
            Object[] values = {
                d.lastDoneOn(),
                d.lastDoneAs(),
                d.lastReport(),
                d.lookAgainOn(),
                d.lookedOn(),
                d.forwardTo(),
                d.forwardSince(),
                d.forwardReason(),
                d.dueOn(),
                d.windowFrom(),
                d.windowUntil(),
                d.asleepSince(),
                d.wakesOn(),
                d.waiting().name(),
                d.waitingSince(),
                d.waitingNote(),
                d.waitingReport(),
                entry.getKey()
            };
            for (int i = 0; i < values.length; i++) {
                set(statement, i + 1, values[i]);
            }
        });
    }

    private static void set(java.sql.PreparedStatement statement, int index, @Nullable Object value)
            throws SQLException {
        if (value == null) {
            statement.setNull(index, Types.NULL);
        } else {
            statement.setObject(index, value);
        }
    }

    private static TaskRow row(ResultSet row) throws SQLException {
        LocalDate stated = date(row, "stated_on");
        Integer months = row.getObject("interval_months", Integer.class);
        return new TaskRow(
                row.getObject("id", UUID.class),
                row.getObject("install_id", UUID.class),
                row.getObject("pump_id", UUID.class),
                row.getObject("task_kind_id", UUID.class),
                row.getObject("model_id", UUID.class),
                row.getString("water_class"),
                row.getBoolean("planned"),
                date(row, "fitted_on"),
                months == null ? null : new Interval(months, row.getInt("interval_days")),
                stated == null ? null : new Past.Stated(stated, row.getBoolean("stated_about")),
                date(row, "counting_from"),
                dates(row),
                row.getObject("waiting_report_id", UUID.class));
    }

    private static Dates dates(ResultSet row) throws SQLException {
        return new Dates(
                date(row, "last_done_on"),
                row.getString("last_done_as"),
                row.getObject("last_report_id", UUID.class),
                date(row, "look_again_on"),
                date(row, "looked_on"),
                date(row, "brought_forward_to"),
                date(row, "brought_forward_since"),
                row.getString("brought_forward_reason"),
                date(row, "due_on"),
                date(row, "window_from"),
                date(row, "window_until"),
                date(row, "asleep_since"),
                date(row, "wakes_on"),
                Waiting.valueOf(row.getString("waiting")),
                date(row, "waiting_since"),
                row.getString("waiting_note"),
                row.getObject("waiting_report_id", UUID.class));
    }

    private static @Nullable LocalDate date(ResultSet row, String column) throws SQLException {
        return row.getObject(column, LocalDate.class);
    }
}
