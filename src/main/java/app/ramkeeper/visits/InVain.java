package app.ramkeeper.visits;

import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** A visit in vain leaves all that it was to do undone, for one reason, whether or not the report names each task. */
@Component
class InVain {

    private final AskedTasks tasks;
    private final JdbcClient jdbc;

    InVain(AskedTasks tasks, JdbcClient jdbc) {
        this.tasks = tasks;
        this.jdbc = jdbc;
    }

    /** The report with those tasks of its visit that it says nothing of. */
    RecordVisit complete(RecordVisit report) {
        VisitId visit = report.visit();
        if (visit == null || report.outcome() != ReportOutcome.COULD_NOT) {
            return report;
        }
        List<UUID> asked = jdbc.sql("select task_id from visit_tasks where visit_id = ?")
                .param(visit.value())
                .query(UUID.class)
                .list();
        List<RecordVisit.Work> unsaid = tasks.byId(asked).stream()
                .filter(task -> task.site().equals(report.site()))
                .filter(task -> report.works().stream().noneMatch(work -> speaksOf(work, task)))
                .map(task -> undone(task, report.reason()))
                .toList();
        return report.with(
                Stream.concat(report.works().stream(), unsaid.stream()).toList());
    }

    private static boolean speaksOf(RecordVisit.Work work, AskedTask task) {
        return work.install().equals(task.install())
                && work.kind().equals(task.kind())
                && (work.pump() == null || Objects.equals(work.pump(), task.pump()));
    }

    private static RecordVisit.Work undone(AskedTask task, @Nullable Reason reason) {
        return new RecordVisit.Work(
                task.install(),
                task.pump(),
                task.kind(),
                task.task(),
                WorkOutcome.COULD_NOT,
                reason,
                null,
                DoneBy.US,
                false,
                null);
    }
}
