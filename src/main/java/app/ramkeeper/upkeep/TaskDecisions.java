package app.ramkeeper.upkeep;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.upkeep.rules.DoneBy;
import app.ramkeeper.upkeep.rules.Waiting;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
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

    private final JdbcClient jdbc;
    private final Recompute recompute;
    private final Clock clock;

    TaskDecisions(JdbcClient jdbc, Recompute recompute, Clock clock) {
        this.jdbc = jdbc;
        this.recompute = recompute;
        this.clock = clock;
    }

    /** Says whose delay it is; the note is kept beside it. */
    public void wait(UUID task, int version, Waiting waiting, @Nullable String note) {
        changed(
                task,
                jdbc.sql("""
                                update service_tasks set waiting = :waiting, waiting_note = :note, waiting_report_id = null,
                                  waiting_since = case when :waiting = 'OURS' then null else :today end, version = version + 1
                                where id = :id and version = :version""")
                        .param("waiting", waiting.name())
                        .param("note", note)
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
