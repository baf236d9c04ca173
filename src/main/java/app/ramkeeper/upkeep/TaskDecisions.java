package app.ramkeeper.upkeep;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.upkeep.rules.DoneBy;
import app.ramkeeper.upkeep.rules.Waiting;
import java.sql.Date;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What the office decides about one task: whose delay it is, who does it, when it was last done before we knew. */
@Service
@ForOffice
@Transactional
public class TaskDecisions {

    /** Nothing that is in a register was looked after before. */
    static final int FIRST_YEAR = 1900;

    private final JdbcClient jdbc;
    private final Recompute recompute;
    private final Clock clock;

    TaskDecisions(JdbcClient jdbc, Recompute recompute, Clock clock) {
        this.jdbc = jdbc;
        this.recompute = recompute;
        this.clock = clock;
    }

    /** Says whose delay it is; the note is kept beside it. */
    public void wait(UUID task, int version, Waiting waiting, @Nullable String note, PersonId by) {
        changed(
                task,
                jdbc.sql("""
                                update service_tasks set waiting = :waiting, waiting_note = :note, waiting_report_id = null,
                                  waiting_since = case when :waiting = 'OURS' then null else :today end,
                                  waiting_by = case when :waiting = 'OURS' then null else :by end, version = version + 1
                                where id = :id and version = :version""")
                        .param("waiting", waiting.name())
                        .param("note", note)
                        .param("by", by.value())
                        .param("today", LocalDate.now(clock))
                        .param("id", task)
                        .param("version", version)
                        .update());
    }

    /** Says who does the task here from now on. */
    public void decide(UUID task, int version, DoneBy doneBy, PersonId by) {
        changed(
                task,
                jdbc.sql("""
                                update service_tasks set done_by = :doneBy, decided_on = :today, decided_by = :by, version = version + 1
                                where id = :id and version = :version""")
                        .param("doneBy", doneBy.name())
                        .param("today", LocalDate.now(clock))
                        .param("by", by.value())
                        .param("id", task)
                        .param("version", version)
                        .update());
    }

    /** States the last day without a report: from the customer's word, or an old book. Reports of later days win. */
    public void lastDone(UUID task, int version, LocalDate on, boolean about) {
        changed(
                task,
                jdbc.sql("""
                                update service_tasks set stated_on = :on, stated_about = :about, version = version + 1
                                where id = :id and version = :version""")
                        .param("on", on)
                        .param("about", about)
                        .param("id", task)
                        .param("version", version)
                        .update());
    }

    /** Takes back what was stated without a report; then only reports tell the last day. */
    public void forgetStated(UUID task, int version) {
        changed(task, jdbc.sql("""
                                update service_tasks set stated_on = null, stated_about = false, version = version + 1
                                where id = :id and version = :version""").param("id", task).param("version", version).update());
    }

    /** When the installs of these tasks were commissioned, where that is known. */
    @Transactional(readOnly = true)
    public Map<UUID, LocalDate> commissioned(Collection<UUID> tasks) {
        Map<UUID, LocalDate> days = new HashMap<>();
        jdbc.sql("""
                        select t.id, i.commissioned_on from service_tasks t join installs i on i.id = t.install_id
                        where t.id = any(?) and i.commissioned_on is not null""")
                .param(tasks.toArray(UUID[]::new))
                .query((row, n) -> days.put(row.getObject(1, UUID.class), row.getObject(2, LocalDate.class)))
                .list();
        return days;
    }

    /**
     * States the last days of many tasks that have none; one that got its day meanwhile keeps it.
     *
     * @return how many were put down
     */
    public int lastDoneWhereUnknown(Map<UUID, LocalDate> days) {
        List<UUID> installs = jdbc.sql("""
                        update service_tasks t set stated_on = d.stated_on, stated_about = false, version = t.version + 1
                        from unnest(:tasks::uuid[], :days::date[]) as d(id, stated_on)
                        where t.id = d.id and t.last_done_as = 'UNKNOWN' and t.ended_on is null returning t.install_id""")
                .param("tasks", days.keySet().toArray(UUID[]::new))
                .param("days", days.values().stream().map(Date::valueOf).toArray(Date[]::new))
                .query(UUID.class)
                .list();
        recompute.installs(Set.copyOf(installs));
        return installs.size();
    }

    private void changed(UUID task, int rows) {
        UUID install = jdbc.sql("select install_id from service_tasks where id = ?")
                .param(task)
                .query(UUID.class)
                .optional()
                .orElseThrow(() -> new Missing("task", task));
        if (rows == 0) {
            throw new OptimisticLockingFailureException("Task " + task + " was changed meanwhile");
        }
        recompute.installs(List.of(install));
    }
}
