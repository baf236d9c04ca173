package app.ramkeeper.visits;

import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Reports that arrived but met a visit in the wrong state: a person decides what becomes of each. Once. */
@Service
@ForOffice
@Transactional
public class ReportsToSettle {

    private static final String SELECT = """
            select t.*, p.name as by_name, b.name as settled_by_name from to_settle t
            join people p on p.id = t.received_by left join people b on b.id = t.settled_by
            """;

    private final JdbcClient jdbc;
    private final HeldReports held;
    private final VisitRecorder recorder;
    private final Clock clock;

    ReportsToSettle(JdbcClient jdbc, HeldReports held, VisitRecorder recorder, Clock clock) {
        this.jdbc = jdbc;
        this.held = held;
        this.recorder = recorder;
        this.clock = clock;
    }

    /** What was decided. */
    public enum How {
        EXTRA_VISIT,
        SUPERSEDED,
        DISMISSED
    }

    /**
     * A report that waits or was settled.
     *
     * @param report the whole text as it was sent
     */
    public record Held(
            UUID id,
            RecordVisit report,
            byte[] hash,
            HeldBecause because,
            Instant receivedAt,
            String receivedBy,
            @Nullable Instant settledAt,
            @Nullable String settledBy,
            @Nullable How how,
            @Nullable String note) {

        public boolean open() {
            return settledAt == null;
        }
    }

    /** What waits, oldest first. */
    @Transactional(readOnly = true)
    public List<Held> open() {
        return jdbc.sql(SELECT + "where t.settled_at is null order by t.received_at, t.id limit 200")
                .query((row, n) -> held(row))
                .list();
    }

    /** @throws Missing if there is none */
    @Transactional(readOnly = true)
    public Held get(UUID id) {
        return jdbc.sql(SELECT + "where t.id = :id")
                .param("id", id)
                .query((row, n) -> held(row))
                .optional()
                .orElseThrow(() -> new Missing("report to settle", id));
    }

    /** The report in force that a held one could replace; none where its visit was never reported. */
    @Transactional(readOnly = true)
    public Optional<ReportId> inForce(Held waiting) {
        return target(waiting).map(Target::id);
    }

    /** What of the report that it would replace stays: the things left to do and the photos that it has not itself. */
    @Transactional(readOnly = true)
    public Kept kept(Held waiting) {
        return target(waiting).map(old -> kept(old.id(), waiting.report())).orElse(new Kept(List.of(), List.of()));
    }

    /** Things left to do and photos of a replaced report that go on under the one that replaces it. */
    public record Kept(List<RecordVisit.FollowUp> followUps, List<RecordVisit.Photo> photos) {}

    private Kept kept(ReportId old, RecordVisit by) {
        Set<String> said =
                by.followUps().stream().map(RecordVisit.FollowUp::text).collect(Collectors.toSet());
        Set<String> seen = by.photos().stream().map(RecordVisit.Photo::sha256).collect(Collectors.toSet());
        List<RecordVisit.FollowUp> left = jdbc.sql(
                        "select text, due_on, promised from follow_ups where report_id = :old order by id")
                .param("old", old.value())
                .query(RecordVisit.FollowUp.class)
                .list();
        List<RecordVisit.Photo> photos = jdbc.sql(
                        "select encode(sha256, 'hex'), caption, taken_at from photos where report_id = :old order by id")
                .param("old", old.value())
                .query((row, n) -> new RecordVisit.Photo(
                        row.getString(1), row.getString(2), ReportQueries.instant(row, "taken_at")))
                .list();
        return new Kept(
                left.stream()
                        .filter(f -> !said.contains(f.text()) && !Commissioning.asksForPump(f.text()))
                        .toList(),
                photos.stream().filter(p -> !seen.contains(p.sha256())).toList());
    }

    /**
     * Records it as a visit of its own.
     *
     * @throws ReportRefused if it breaks a rule by now
     */
    public ReportId asExtraVisit(UUID id, PersonId by) {
        Held waiting = hold(id);
        recorder.settle(placed(waiting.report(), null, null, new Kept(List.of(), List.of())), waiting.hash(), by);
        settled(id, How.EXTRA_VISIT, null, by);
        return waiting.report().id();
    }

    /** Records it in place of the report that is in force; what that one promised and showed is not lost with it. */
    public ReportId asSuperseding(UUID id, PersonId by) {
        Held waiting = hold(id);
        Target target = target(waiting)
                .orElseThrow(() -> new Conflict("There is no report in force that this one could replace."));
        Kept kept = kept(target.id(), waiting.report());
        recorder.settle(placed(waiting.report(), target.visit(), target.id(), kept), waiting.hash(), by);
        settled(id, How.SUPERSEDED, null, by);
        return waiting.report().id();
    }

    /** Keeps the text and applies nothing of it. */
    public void dismiss(UUID id, String note, PersonId by) {
        hold(id);
        settled(id, How.DISMISSED, note, by);
    }

    private Held hold(UUID id) {
        jdbc.sql("select 1 from to_settle where id = :id for update")
                .param("id", id)
                .query(Integer.class)
                .optional();
        Held waiting = get(id);
        if (!waiting.open()) {
            throw new Conflict("This report is settled already.");
        }
        return waiting;
    }

    private void settled(UUID id, How how, @Nullable String note, PersonId by) {
        jdbc.sql("""
                        update to_settle set settled_at = :now, settled_by = :by, how = :how, settled_note = :note, version = version + 1
                        where id = :id""")
                .param("now", Timestamp.from(clock.instant()))
                .param("by", by.value())
                .param("how", how.name())
                .param("note", note)
                .param("id", id)
                .update();
    }

    private record Target(ReportId id, @Nullable VisitId visit) {}

    /** The end of the chain that begins with the report it meant to correct, or with its visit's first report. */
    private Optional<Target> target(Held waiting) {
        ReportId corrects = waiting.report().supersedes();
        VisitId visit = waiting.report().visit();
        SiteId site = waiting.report().site();
        return jdbc.sql("""
                        with recursive chain as (
                          select id from visit_reports where id = :corrects or (cast(:corrects as uuid) is null and visit_id = :visit and supersedes is null)
                          union all select r.id from visit_reports r join chain c on r.supersedes = c.id)
                        select r.id, r.visit_id from current_reports r join chain c on c.id = r.id
                          join sites s on s.id = r.site_id
                        where coalesce(s.merged_into, s.id) = (select coalesce(merged_into, id) from sites where id = :site)""")
                .param("corrects", corrects == null ? null : corrects.value(), java.sql.Types.OTHER)
                .param("visit", visit == null ? null : visit.value(), java.sql.Types.OTHER)
                .param("site", site.value())
                .query((row, n) -> {
                    UUID of = row.getObject("visit_id", UUID.class);
                    return new Target(
                            new ReportId(row.getObject("id", UUID.class)), of == null ? null : new VisitId(of));
                })
                .optional();
    }

    private static RecordVisit placed(
            RecordVisit r, @Nullable VisitId visit, @Nullable ReportId supersedes, Kept kept) {
        return new RecordVisit(
                r.id(),
                visit,
                r.site(),
                r.kind(),
                supersedes,
                r.attendedOn(),
                r.startedAt(),
                r.arrivedAt(),
                r.leftAt(),
                r.people(),
                r.outcome(),
                r.reason(),
                r.note(),
                r.nobodyThere(),
                r.customerName(),
                r.source(),
                r.works(),
                r.readings(),
                r.findings(),
                r.parts(),
                Stream.concat(r.photos().stream(), kept.photos().stream()).toList(),
                Stream.concat(r.followUps().stream(), kept.followUps().stream()).toList(),
                r.water(),
                r.commissioned());
    }

    private Held held(ResultSet row) throws SQLException {
        Timestamp settled = row.getTimestamp("settled_at");
        String how = row.getString("how");
        return new Held(
                row.getObject("id", UUID.class),
                held.read(row.getString("payload")),
                row.getBytes("content_hash"),
                HeldBecause.valueOf(row.getString("reason")),
                row.getTimestamp("received_at").toInstant(),
                row.getString("by_name"),
                settled == null ? null : settled.toInstant(),
                row.getString("settled_by_name"),
                how == null ? null : How.valueOf(how),
                row.getString("settled_note"));
    }
}
