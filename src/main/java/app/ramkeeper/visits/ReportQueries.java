package app.ramkeeper.visits;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.web.Cursor;
import app.ramkeeper.web.Slice;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads reports with all that hangs on them; a page of them costs nine statements, however many there are on it. */
@Repository
class ReportQueries {

    private static final int PAGE = 20;
    private static final String HEAD = """
            select r.*, put.name as commissioned_name, s.name as site_name, b.name as recorded_by_name, later.id as superseded_by,
              (select array_agg(p.name order by rp.lead desc, p.name) from report_people rp join people p on p.id = rp.person_id
                where rp.report_id = r.id) as people
            from visit_reports r join sites s on s.id = r.site_id join people b on b.id = r.recorded_by
            left join visit_reports later on later.supersedes = r.id left join installs put on put.id = r.commissioned_install_id
            """;
    private static final String IN_FORCE =
            " later.id is null and r.outcome <> 'WITHDRAWN' and (:first or (r.attended_on, r.id) < (cast(:on as date), cast(:id as uuid)))"
                    + " order by r.attended_on desc, r.id desc limit :limit";

    private final JdbcClient jdbc;
    private final ReportDetails details;

    ReportQueries(JdbcClient jdbc, ReportDetails details) {
        this.jdbc = jdbc;
        this.details = details;
    }

    Optional<ReportView> byId(ReportId id) {
        List<ReportHead> heads = jdbc.sql(HEAD + "where r.id = :id")
                .param("id", id.value())
                .query(ReportQueries::head)
                .list();
        return details.of(heads).stream().findFirst();
    }

    Slice<ReportView> ofInstall(InstallId install, @Nullable String after) {
        String speaksOfIt = """
                r.id in (select report_id from report_works where install_id = :of
                  union select report_id from readings where install_id = :of
                  union select report_id from findings where install_id = :of
                  union select report_id from parts_used where install_id = :of)""";
        return page("where " + speaksOfIt + " and" + IN_FORCE, speaksOfIt, install.value(), after);
    }

    private Slice<ReportView> page(String where, String all, UUID of, @Nullable String after) {
        Optional<List<String>> keys = Cursor.read(after, 2);
        List<ReportHead> heads;
        try {
            heads = jdbc.sql(HEAD + where)
                    .param("of", of)
                    .param("first", keys.isEmpty())
                    .param("on", keys.map(k -> LocalDate.parse(k.get(0))).orElse(LocalDate.EPOCH))
                    .param("id", keys.map(k -> UUID.fromString(k.get(1))).orElse(of))
                    .param("limit", PAGE + 1)
                    .query(ReportQueries::head)
                    .list();
        } catch (java.time.DateTimeException | IllegalArgumentException brokenCursor) {
            return page(where, all, of, null);
        }
        boolean more = heads.size() > PAGE;
        List<ReportHead> shown = more ? heads.subList(0, PAGE) : heads;
        ReportHead last = shown.isEmpty() ? null : shown.get(shown.size() - 1);
        return new Slice<>(
                details.of(shown), more && last != null ? Cursor.of(last.on(), last.id()) : null, count(all, of));
    }

    private long count(String all, UUID of) {
        return jdbc.sql("select count(*) from (select 1 from current_reports r where " + all + " limit 1001) as c")
                .param("of", of)
                .query(Long.class)
                .single();
    }

    /** The report's own row. */
    record ReportHead(
            UUID id,
            @Nullable UUID visit,
            UUID site,
            String siteName,
            VisitKind kind,
            LocalDate on,
            @Nullable Instant startedAt,
            @Nullable Instant arrivedAt,
            @Nullable Instant leftAt,
            Instant recordedAt,
            String recordedBy,
            ReportOutcome outcome,
            @Nullable Reason reason,
            @Nullable String note,
            boolean nobodyThere,
            @Nullable String customerName,
            ReportSource source,
            @Nullable UUID supersedes,
            @Nullable UUID supersededBy,
            ReportView.@Nullable Commissioned commissioned,
            List<String> people) {}

    private static ReportHead head(ResultSet row, int n) throws SQLException {
        String reason = row.getString("reason");
        return new ReportHead(
                row.getObject("id", UUID.class),
                row.getObject("visit_id", UUID.class),
                row.getObject("site_id", UUID.class),
                row.getString("site_name"),
                VisitKind.valueOf(row.getString("kind")),
                row.getObject("attended_on", LocalDate.class),
                instant(row, "started_at"),
                instant(row, "arrived_at"),
                instant(row, "left_at"),
                row.getTimestamp("recorded_at").toInstant(),
                row.getString("recorded_by_name"),
                ReportOutcome.valueOf(row.getString("outcome")),
                reason == null ? null : Reason.valueOf(reason),
                row.getString("note"),
                row.getBoolean("nobody_there"),
                row.getString("customer_name"),
                ReportSource.valueOf(row.getString("source")),
                row.getObject("supersedes", UUID.class),
                row.getObject("superseded_by", UUID.class),
                commissioned(row),
                row.getArray("people") == null
                        ? List.of()
                        : List.of((String[]) row.getArray("people").getArray()));
    }

    private static ReportView.@Nullable Commissioned commissioned(ResultSet row) throws SQLException {
        UUID install = row.getObject("commissioned_install_id", UUID.class);
        String setting = row.getString("valve_setting");
        return install == null && setting == null
                ? null
                : new ReportView.Commissioned(
                        install == null ? null : new InstallId(install), row.getString("commissioned_name"), setting);
    }

    static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
        Timestamp at = row.getTimestamp(column);
        return at == null ? null : at.toInstant();
    }
}
