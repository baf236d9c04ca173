package app.ramkeeper.visits.record;

import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.visits.AskedTask;
import app.ramkeeper.visits.AskedTasks;
import app.ramkeeper.visits.Quantity;
import app.ramkeeper.visits.ReportId;
import app.ramkeeper.visits.ReportView;
import app.ramkeeper.visits.VisitHistory;
import app.ramkeeper.visits.VisitKind;
import app.ramkeeper.visits.form.TypedForm;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalTime;
import java.util.HashMap;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Fills the form with what a report says, so that it can be corrected. */
@Component
class Correcting {

    private static final String UNITS_OF_READINGS = """
            select install_id, quantity, place, value, unit, bucket_litres, bucket_seconds, instrument_id, pump_id, as_read,
              not_comparable_reason from readings where report_id = :id order by id""";

    private final VisitHistory history;
    private final JdbcClient jdbc;
    private final AskedTasks tasks;
    private final TaskParts parts;
    private final Clock clock;

    Correcting(VisitHistory history, JdbcClient jdbc, AskedTasks tasks, TaskParts parts, Clock clock) {
        this.history = history;
        this.tasks = tasks;
        this.parts = parts;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    TypedForm form(ReportId id) {
        ReportView report = history.report(id).orElseThrow(() -> new Missing("report", id));
        if (report.supersededBy() != null) {
            throw new Conflict("This report was corrected already. Open the one in force and correct that.");
        }
        TypedForm form = head(report).set("supersedes", id.value());
        List<UUID> people = jdbc.sql("select person_id from report_people where report_id = :id order by lead desc")
                .param("id", id.value())
                .query(UUID.class)
                .list();
        RecordStart.people(form, people);
        works(form, rowsOf("""
                select install_id as install, pump_id as pump, task_kind_id as kind, task_id as task, outcome, reason,
                  look_again_on as "lookAgainOn", done_by as by, case when about then 'true' end as about, note
                from report_works where report_id = :id order by id""", id));
        rows(
                form,
                "finding",
                "findings",
                rowsOf(
                        "select coalesce(install_id::text, 'SITE') as install, symptom, cause, action from findings where report_id = :id order by id",
                        id));
        rows(form, "part", "parts", rowsOf("""
                select install_id as install, pump_id as pump, part_id as part, part_text as text, position, quantity, batch
                from parts_used where report_id = :id order by id""", id));
        rows(form, "left", "lefts", rowsOf("""
                select text, due_on as "dueOn", case when promised then 'true' end as promised
                from follow_ups where report_id = :id order by id""", id));
        readings(form, id);
        photos(form, id);
        return form;
    }

    /** Tasks of ours that are still there stand as they did when they were asked for; all else is other work. */
    private void works(TypedForm form, List<Map<String, @Nullable Object>> works) {
        Set<UUID> there =
                tasks
                        .byId(works.stream()
                                .map(work -> (UUID) work.get("task"))
                                .filter(Objects::nonNull)
                                .toList())
                        .stream()
                        .map(AskedTask::task)
                        .collect(Collectors.toSet());
        Map<Boolean, List<Map<String, @Nullable Object>>> asked = works.stream()
                .collect(Collectors.partitioningBy(work ->
                        there.contains(work.get("task")) && "US".equals(work.get("by")) && work.get("about") == null));
        rows(form, "task", "tasks", Objects.requireNonNull(asked.get(true)));
        form.set("tasks", Objects.requireNonNull(asked.get(true)).size());
        rows(form, "extra", "extras", Objects.requireNonNull(asked.get(false)));
        Stream.of("task[", "extra[")
                .flatMap(name -> IntStream.range(0, works.size()).mapToObj(i -> name + i + "]"))
                .filter(field -> form.names().contains(field + ".note"))
                .filter(field -> parts.asks(Objects.requireNonNull(form.uuid(field + ".kind"))))
                .forEach(field -> PartsAsked.restore(form, field));
    }

    private TypedForm head(ReportView report) {
        return new TypedForm()
                .set("site", report.site().value())
                .set("visit", report.visit() == null ? null : report.visit().value())
                .set("kind", report.kind())
                .set("attendedOn", report.on())
                .set("startedAt", time(report.startedAt()))
                .set("arrivedAt", time(report.arrivedAt()))
                .set("leftAt", time(report.leftAt()))
                .set("outcome", report.outcome())
                .set("reason", report.reason())
                .set("note", report.note())
                .set("nobodyThere", report.nobodyThere() ? "true" : null)
                .set("customerName", report.customerName());
    }

    private @Nullable LocalTime time(@Nullable Instant at) {
        return at == null
                ? null
                : at.atZone(clock.getZone()).toLocalTime().withSecond(0).withNano(0);
    }

    private List<Map<String, @Nullable Object>> rowsOf(String sql, ReportId id) {
        return jdbc.sql(sql).param("id", id.value()).query().listOfRows();
    }

    private static void rows(TypedForm form, String name, String count, List<Map<String, @Nullable Object>> rows) {
        for (int i = 0; i < rows.size(); i++) {
            String field = name + "[" + i + "].";
            rows.get(i).forEach((column, value) -> form.set(field + column, plain(value)));
        }
        form.set(count, Math.max(1, rows.size()));
    }

    private static @Nullable Object plain(@Nullable Object value) {
        return value instanceof BigDecimal number ? number.toPlainString() : value;
    }

    private void readings(TypedForm form, ReportId id) {
        Map<String, Integer> times = new HashMap<>();
        Set<Object> flows = new HashSet<>();
        rowsOf(UNITS_OF_READINGS, id).forEach(row -> {
            if (row.get("not_comparable_reason") == null) {
                flows.add(row.get("quantity"));
            }
            String first = "reading." + row.get("install_id") + "." + row.get("quantity") + "." + row.get("place");
            int number = times.merge(first, 1, Integer::sum);
            String name = number == 1 ? first : first + "." + number;
            boolean bucket = row.get("bucket_litres") != null;
            form.set(name + ".value", bucket ? null : plain(row.get("value")))
                    .set(name + ".unit", row.get("unit"))
                    .set(name + ".litres", plain(row.get("bucket_litres")))
                    .set(name + ".seconds", plain(row.get("bucket_seconds")))
                    .set(name + ".instrument", row.get("instrument_id"))
                    .set(name + ".pump", row.get("pump_id"))
                    .set(name + ".asRead", Boolean.TRUE.equals(row.get("as_read")) ? "true" : null)
                    .set(name + ".notComparable", row.get("not_comparable_reason"));
        });
        // A commissioning that was recorded without its flows is not asked for them again.
        boolean without = form.value("kind").equals(VisitKind.COMMISSIONING.name())
                && !flows.containsAll(Set.of(Quantity.DELIVERED_FLOW.name(), Quantity.DRIVE_FLOW.name()));
        form.set(BaselineAsked.WITHOUT, without ? "true" : null);
    }

    private void photos(TypedForm form, ReportId id) {
        jdbc.sql("select sha256, caption, taken_at from photos where report_id = :id order by id")
                .param("id", id.value())
                .query(row -> {
                    String sha = HexFormat.of().formatHex(row.getBytes("sha256"));
                    form.add("photo", sha).set("caption." + sha, row.getString("caption"));
                    if (row.getTimestamp("taken_at") != null) {
                        form.set("taken." + sha, row.getTimestamp("taken_at").toInstant());
                    }
                });
    }
}
