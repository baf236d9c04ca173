package app.ramkeeper.visits;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Uuids;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.namedparam.MapSqlParameterSource;
import org.springframework.jdbc.core.namedparam.NamedParameterJdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Writes reports and their parts; rows only come. */
@Repository
class ReportStore {

    private final JdbcClient jdbc;
    private final NamedParameterJdbcTemplate batches;
    private final Clock clock;

    ReportStore(JdbcClient jdbc, NamedParameterJdbcTemplate batches, Clock clock) {
        this.jdbc = jdbc;
        this.batches = batches;
        this.clock = clock;
    }

    /** What is known of a report id: the hash of its content, and whether it waits to be settled; applied comes first. */
    record Known(byte[] hash, @Nullable HeldBecause held) {}

    Optional<Known> known(ReportId id) {
        return jdbc.sql("""
                        select content_hash as hash, null as held, 1 as rank from visit_reports where id = :id
                        union all
                        select content_hash, reason, 2 from to_settle where report_id = :id
                        order by rank limit 1""")
                .param("id", id.value())
                .query((row, n) -> new Known(
                        row.getBytes("hash"),
                        row.getString("held") == null ? null : HeldBecause.valueOf(row.getString("held"))))
                .optional();
    }

    /** Writes the report's head; false if the id is taken, also by a writer that is just committing. */
    boolean insertHead(RecordVisit c, PersonId by, byte[] hash) {
        RecordVisit.Commissioned commissioned = c.commissioned();
        InstallId install = commissioned == null ? null : commissioned.install();
        return jdbc.sql("""
                        insert into visit_reports (id, visit_id, site_id, kind, supersedes, attended_on, started_at, arrived_at, left_at,
                          recorded_at, recorded_by, outcome, reason, note, nobody_there, customer_name, content_hash, source,
                          commissioned_install_id, valve_setting)
                        values (:id, :visit, :site, :kind, :supersedes, :on, :started, :arrived, :left, :now, :by, :outcome, :reason,
                          :note, :nobody, :customer, :hash, :source, :commissioned, :setting)
                        on conflict (id) do nothing""")
                        .param("id", c.id().value())
                        .param("visit", c.visit() == null ? null : c.visit().value())
                        .param("site", c.site().value())
                        .param("kind", c.kind().name())
                        .param(
                                "supersedes",
                                c.supersedes() == null ? null : c.supersedes().value())
                        .param("on", c.attendedOn())
                        .param("started", at(c.startedAt()))
                        .param("arrived", at(c.arrivedAt()))
                        .param("left", at(c.leftAt()))
                        .param("now", at(clock.instant()))
                        .param("by", by.value())
                        .param("outcome", c.outcome().name())
                        .param("reason", name(c.reason()))
                        .param("note", c.note())
                        .param("nobody", c.nobodyThere())
                        .param("customer", c.customerName())
                        .param("hash", hash)
                        .param("source", c.source().name())
                        .param("commissioned", install == null ? null : install.value())
                        .param("setting", commissioned == null ? null : commissioned.setting())
                        .update()
                == 1;
    }

    /** Writes all that hangs on the report; returns the ids of the parts used, in the command's order. */
    List<UUID> insertParts(RecordVisit c) {
        batch(
                "insert into report_people (report_id, person_id, lead) values (:report, :person, :lead)",
                c,
                c.people(),
                p -> row().addValue("person", p.value())
                        .addValue("lead", p.equals(c.people().get(0))));
        batch(
                "insert into report_works (id, report_id, install_id, pump_id, task_kind_id, task_id, outcome, reason,"
                        + " look_again_on, done_by, about, note) values (:id, :report, :install, :pump, :kind, :task,"
                        + " :outcome, :reason, :again, :by, :about, :note)",
                c,
                c.works(),
                ReportStore::work);
        batch(
                "insert into readings (id, report_id, install_id, pump_id, quantity, place, value, unit, value_si,"
                        + " bucket_litres, bucket_seconds, instrument_id, as_read, comparable, not_comparable_reason)"
                        + " values (:id, :report, :install, :pump, :quantity, :place, :value, :unit, :si, :litres,"
                        + " :seconds, :instrument, :asRead, :comparable, :why)",
                c,
                c.readings(),
                ReportStore::reading);
        batch(
                "insert into findings (id, report_id, install_id, symptom, cause, action)"
                        + " values (:id, :report, :install, :symptom, :cause, :action)",
                c,
                c.findings(),
                f -> row().addValue(
                                "install",
                                f.install() == null ? null : f.install().value())
                        .addValue("symptom", f.symptom().name())
                        .addValue("cause", f.cause())
                        .addValue("action", f.action()));
        batch(
                "insert into photos (id, report_id, sha256, caption, taken_at) values (:id, :report, :sha, :caption, :taken)",
                c,
                c.photos(),
                p -> row().addValue("sha", HexFormat.of().parseHex(p.sha256()))
                        .addValue("caption", p.caption())
                        .addValue("taken", at(p.takenAt())));
        batch(
                "insert into follow_ups (id, report_id, site_id, text, due_on, promised)"
                        + " values (:id, :report, :site, :text, :due, :promised)",
                c,
                c.followUps(),
                f -> row().addValue("site", c.site().value())
                        .addValue("text", f.text())
                        .addValue("due", f.dueOn())
                        .addValue("promised", f.promised()));
        return batch(
                "insert into parts_used (id, report_id, install_id, pump_id, part_id, part_text, position, quantity, batch)"
                        + " values (:id, :report, :install, :pump, :part, :text, :position, :quantity, :batch)",
                c,
                c.parts(),
                ReportStore::part);
    }

    private <T> List<UUID> batch(String sql, RecordVisit c, List<T> items, Function<T, MapSqlParameterSource> row) {
        List<UUID> ids = items.stream().map(item -> Uuids.next()).toList();
        MapSqlParameterSource[] rows = new MapSqlParameterSource[items.size()];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = row.apply(items.get(i)).addValue("id", ids.get(i)).addValue("report", c.id().value());
        }
        if (rows.length > 0) {
            batches.batchUpdate(sql, rows);
        }
        return ids;
    }

    private static MapSqlParameterSource work(RecordVisit.Work w) {
        return row().addValue("install", w.install().value())
                .addValue("pump", w.pump() == null ? null : w.pump().value())
                .addValue("kind", w.kind().value())
                .addValue("task", w.task())
                .addValue("outcome", w.outcome().name())
                .addValue("reason", name(w.reason()))
                .addValue("again", w.lookAgainOn())
                .addValue("by", w.by().name())
                .addValue("about", w.about())
                .addValue("note", w.note());
    }

    private static MapSqlParameterSource reading(RecordVisit.Reading r) {
        return row().addValue("install", r.install().value())
                .addValue("pump", r.pump() == null ? null : r.pump().value())
                .addValue("quantity", r.quantity().name())
                .addValue("place", r.place().name())
                .addValue("value", r.value().value())
                .addValue("unit", r.value().unit().name())
                .addValue("si", r.value().si())
                .addValue("litres", r.bucket() == null ? null : r.bucket().litres())
                .addValue("seconds", r.bucket() == null ? null : r.bucket().seconds())
                .addValue("instrument", r.instrument())
                .addValue("asRead", r.asRead())
                .addValue("comparable", r.notComparable() == null)
                .addValue("why", r.notComparable());
    }

    private static MapSqlParameterSource part(RecordVisit.PartUsed p) {
        return row().addValue("install", p.install().value())
                .addValue("pump", p.pump() == null ? null : p.pump().value())
                .addValue("part", p.part() == null ? null : p.part().value())
                .addValue("text", p.text())
                .addValue("position", name(p.position()))
                .addValue("quantity", p.quantity())
                .addValue("batch", p.batch());
    }

    private static MapSqlParameterSource row() {
        return new MapSqlParameterSource();
    }

    private static @Nullable String name(@Nullable Enum<?> value) {
        return value == null ? null : value.name();
    }

    static @Nullable Timestamp at(@Nullable Instant instant) {
        return instant == null ? null : Timestamp.from(instant);
    }
}
