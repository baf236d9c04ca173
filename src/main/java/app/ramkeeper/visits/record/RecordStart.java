package app.ramkeeper.visits.record;

import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.visits.AskedTask;
import app.ramkeeper.visits.AskedTasks;
import app.ramkeeper.visits.ReportId;
import app.ramkeeper.visits.ReportOutcome;
import app.ramkeeper.visits.VisitKind;
import app.ramkeeper.visits.form.TypedForm;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Fills the form before it is first shown. */
@Component
class RecordStart {

    private final JdbcClient jdbc;
    private final AskedTasks tasks;
    private final Correcting correcting;
    private final Clock clock;

    RecordStart(JdbcClient jdbc, AskedTasks tasks, Correcting correcting, Clock clock) {
        this.jdbc = jdbc;
        this.tasks = tasks;
        this.correcting = correcting;
        this.clock = clock;
    }

    Optional<SiteId> siteOf(UUID visit) {
        return jdbc.sql("select site_id from visits where id = :id")
                .param("id", visit)
                .query(UUID.class)
                .optional()
                .map(SiteId::new);
    }

    private record Planned(String kind, @Nullable LocalDate on) {}

    /** A planned visit: what it is to answer stands there, and all is taken as usual until somebody says otherwise. */
    TypedForm ofVisit(UUID visit, PersonId writer) {
        Planned plan = jdbc.sql("select kind, planned_on from visits where id = :id")
                .param("id", visit)
                .query((row, n) -> new Planned(row.getString(1), row.getObject(2, LocalDate.class)))
                .single();
        List<UUID> asked = jdbc.sql("select task_id from visit_tasks where visit_id = :id")
                .param("id", visit)
                .query(UUID.class)
                .list();
        List<UUID> people = jdbc.sql("select person_id from visit_people where visit_id = :id order by lead desc")
                .param("id", visit)
                .query(UUID.class)
                .list();
        LocalDate today = LocalDate.now(clock);
        LocalDate on = plan.on() == null || plan.on().isAfter(today) ? today : plan.on();
        TypedForm form = fresh(on, plan.kind()).set("visit", visit);
        people(form, people.isEmpty() ? List.of(writer.value()) : people);
        List<AskedTask> found = tasks.byId(asked);
        return ask(form, found).set("asUsual", found.isEmpty() ? null : "true");
    }

    /** A visit nobody planned: what is due there is listed, and stays as it is unless it is answered. */
    TypedForm ofSite(SiteId site, PersonId writer) {
        LocalDate today = LocalDate.now(clock);
        TypedForm form = fresh(today, VisitKind.SERVICE.name()).set("lead", writer.value());
        return ask(form, tasks.openAt(site, today));
    }

    /** A correction restates the report in full. */
    TypedForm ofReport(ReportId old) {
        return correcting.form(old).set("id", ReportId.next());
    }

    /** Puts in who was there: who led, a second person, and as many others as there were. */
    static void people(TypedForm form, List<UUID> people) {
        form.set("lead", people.isEmpty() ? null : people.get(0));
        form.set("second", people.size() > 1 ? people.get(1) : null);
        for (int i = 2; i < people.size(); i++) {
            form.set("other[" + (i - 2) + "]", people.get(i));
        }
        form.set("others", people.size() > 2 ? people.size() - 2 : null);
    }

    private static TypedForm fresh(LocalDate on, String kind) {
        return new TypedForm()
                .set("id", ReportId.next())
                .set("attendedOn", on)
                .set("kind", kind)
                .set("outcome", ReportOutcome.DONE)
                .set("extras", 1)
                .set("findings", 1)
                .set("parts", 1)
                .set("lefts", 1);
    }

    private static TypedForm ask(TypedForm form, List<AskedTask> asked) {
        for (int i = 0; i < asked.size(); i++) {
            AskedTask task = asked.get(i);
            String field = "task[" + i + "]";
            form.set(field + ".task", task.task())
                    .set(field + ".install", task.install().value())
                    .set(field + ".kind", task.kind().value())
                    .set(
                            field + ".pump",
                            task.pump() == null ? null : task.pump().value());
        }
        return form.set("tasks", asked.size());
    }
}
