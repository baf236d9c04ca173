package app.ramkeeper.visits;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.shared.Unit;
import app.ramkeeper.visits.ReportQueries.ReportHead;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Adds works, readings, findings, parts, photos and things left to do to the heads of reports. */
@Repository
class ReportDetails {

    private final JdbcClient jdbc;

    ReportDetails(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<ReportView> of(List<ReportHead> heads) {
        if (heads.isEmpty()) {
            return List.of();
        }
        UUID[] ids = heads.stream().map(ReportHead::id).toArray(UUID[]::new);
        var works = by(
                ids,
                "select d.*, i.name as install_name, k.name as kind_name from report_works d"
                        + " join installs i on i.id = d.install_id join task_kinds k on k.id = d.task_kind_id",
                ReportDetails::work);
        var readings = by(
                ids,
                "select d.*, i.name as install_name, m.name as instrument from readings d"
                        + " join installs i on i.id = d.install_id left join instruments m on m.id = d.instrument_id",
                ReportDetails::reading);
        var findings = by(
                ids,
                "select d.*, i.name as install_name from findings d" + " left join installs i on i.id = d.install_id",
                ReportDetails::finding);
        var parts = by(
                ids,
                "select d.*, i.name as install_name, coalesce(p.name, d.part_text) as part_name from parts_used d"
                        + " join installs i on i.id = d.install_id left join parts p on p.id = d.part_id",
                ReportDetails::part);
        var photos = by(
                ids,
                "select d.* from photos d",
                (row, n) -> new ReportView.Photo(
                        row.getObject("id", UUID.class),
                        row.getString("caption"),
                        ReportQueries.instant(row, "taken_at")));
        var left = by(
                ids,
                "select d.* from follow_ups d",
                (row, n) -> new ReportView.FollowUp(
                        row.getObject("id", UUID.class),
                        row.getString("text"),
                        row.getObject("due_on", LocalDate.class),
                        row.getBoolean("promised"),
                        row.getObject("done_on", LocalDate.class)));
        return heads.stream()
                .map(h -> view(
                        h,
                        get(works, h),
                        inOrder(get(readings, h)),
                        get(findings, h),
                        get(parts, h),
                        get(photos, h),
                        get(left, h)))
                .toList();
    }

    private static <T> List<T> get(Map<UUID, List<T>> found, ReportHead head) {
        return found.getOrDefault(head.id(), List.of());
    }

    private static List<ReportView.Reading> inOrder(List<ReportView.Reading> readings) {
        return readings.stream()
                .sorted(Comparator.comparing(ReportView.Reading::installName)
                        .thenComparing(ReportView.Reading::install, Comparator.comparing(InstallId::value))
                        .thenComparing(ReportView.Reading::quantity))
                .toList();
    }

    private interface Mapper<T> {
        T map(ResultSet row, int n) throws SQLException;
    }

    private <T> Map<UUID, List<T>> by(UUID[] ids, String select, Mapper<T> mapper) {
        Map<UUID, List<T>> found = new HashMap<>();
        jdbc.sql(select + " where d.report_id = any(:ids) order by d.id")
                .param("ids", ids)
                .query(row -> {
                    found.computeIfAbsent(row.getObject("report_id", UUID.class), id -> new ArrayList<>())
                            .add(mapper.map(row, 0));
                });
        return found;
    }

    private static ReportView view(
            ReportHead h,
            List<ReportView.Work> works,
            List<ReportView.Reading> readings,
            List<ReportView.Finding> findings,
            List<ReportView.Part> parts,
            List<ReportView.Photo> photos,
            List<ReportView.FollowUp> left) {
        return new ReportView(
                new ReportId(h.id()),
                h.visit() == null ? null : new VisitId(h.visit()),
                new SiteId(h.site()),
                h.siteName(),
                h.kind(),
                h.on(),
                h.startedAt(),
                h.arrivedAt(),
                h.leftAt(),
                h.recordedAt(),
                h.recordedBy(),
                h.outcome(),
                h.reason(),
                h.note(),
                h.nobodyThere(),
                h.customerName(),
                h.source(),
                reportId(h.supersedes()),
                reportId(h.supersededBy()),
                h.commissioned(),
                h.people(),
                works,
                readings,
                findings,
                parts,
                photos,
                left);
    }

    private static @Nullable ReportId reportId(@Nullable UUID id) {
        return id == null ? null : new ReportId(id);
    }

    private static ReportView.Work work(ResultSet row, int n) throws SQLException {
        String reason = row.getString("reason");
        return new ReportView.Work(
                new InstallId(row.getObject("install_id", UUID.class)),
                row.getString("install_name"),
                row.getString("kind_name"),
                WorkOutcome.valueOf(row.getString("outcome")),
                reason == null ? null : Reason.valueOf(reason),
                row.getObject("look_again_on", LocalDate.class),
                DoneBy.valueOf(row.getString("done_by")),
                row.getBoolean("about"),
                row.getString("note"));
    }

    private static ReportView.Reading reading(ResultSet row, int n) throws SQLException {
        return new ReportView.Reading(
                new InstallId(row.getObject("install_id", UUID.class)),
                row.getString("install_name"),
                Quantity.valueOf(row.getString("quantity")),
                MeasuredAt.valueOf(row.getString("place")),
                row.getBigDecimal("value"),
                Unit.valueOf(row.getString("unit")).symbol(),
                row.getDouble("value_si"),
                row.getBigDecimal("bucket_litres"),
                row.getBigDecimal("bucket_seconds"),
                row.getString("instrument"),
                row.getBoolean("as_read"),
                row.getBoolean("comparable"),
                row.getString("not_comparable_reason"));
    }

    private static ReportView.Finding finding(ResultSet row, int n) throws SQLException {
        UUID install = row.getObject("install_id", UUID.class);
        return new ReportView.Finding(
                install == null ? null : new InstallId(install),
                row.getString("install_name"),
                Symptom.valueOf(row.getString("symptom")),
                row.getString("cause"),
                row.getString("action"));
    }

    private static ReportView.Part part(ResultSet row, int n) throws SQLException {
        return new ReportView.Part(
                new InstallId(row.getObject("install_id", UUID.class)),
                row.getString("install_name"),
                row.getString("part_name"),
                row.getBigDecimal("quantity"),
                row.getString("position"),
                row.getString("batch"));
    }
}
