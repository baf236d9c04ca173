package app.ramkeeper.visits;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.PumpId;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.shared.Unit;
import app.ramkeeper.web.Cursor;
import app.ramkeeper.web.Slice;
import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads a site's and an install's story. */
@Repository
class StoryQueries {

    private static final int PAGE = 20;

    /** Which install, where the report speaks of several; empty else. */
    private static final String WHICH = "case when spoken.installs > 1 then ' (' || i.name || ')' else '' end";

    private final JdbcClient jdbc;
    private final VisitWords words;

    StoryQueries(JdbcClient jdbc, VisitWords words) {
        this.jdbc = jdbc;
        this.words = words;
    }

    List<VisitInWords> lastVisits(SiteId site, int most) {
        return visits(site, null, most);
    }

    /** All visits of a site, newest first, a page at a time; one statement, and nobody is told how many there are. */
    Slice<VisitInWords> ofSite(SiteId site, @Nullable String after) {
        List<VisitInWords> rows = visits(site, place(after), PAGE + 1);
        if (rows.size() <= PAGE) {
            return new Slice<>(rows, null, rows.size());
        }
        VisitInWords last = rows.get(PAGE - 1);
        return new Slice<>(
                rows.subList(0, PAGE), Cursor.of(last.on(), last.report().value()), PAGE);
    }

    private record Place(LocalDate on, UUID report) {}

    /** Where a page goes on; the start for an address that somebody has broken. */
    private static @Nullable Place place(@Nullable String after) {
        try {
            return Cursor.read(after, 2)
                    .map(keys -> new Place(LocalDate.parse(keys.get(0)), UUID.fromString(keys.get(1))))
                    .orElse(null);
        } catch (DateTimeException | IllegalArgumentException broken) {
            return null;
        }
    }

    /**
     * By what was done at the installs that are there now: those of a site that was split off bring their visits along.
     * One that says nothing of any install stays where it was.
     */
    private List<VisitInWords> visits(SiteId site, @Nullable Place after, int most) {
        return jdbc.sql("""
                        with told as (
                          select id from visit_reports where site_id = :site
                          union select w.report_id from report_works w join installs i on i.id = w.install_id where i.site_id = :site
                          union select g.report_id from readings g join installs i on i.id = g.install_id where i.site_id = :site)
                        select r.id, r.attended_on, r.kind, r.outcome, r.reason, r.note, case when several.installs and spoken.installs = 1 then spoken.name end as at,
                          (select string_agg(f.text, '; ' order by f.id) from follow_ups f where f.report_id = r.id and f.promised) as promised,
                          (select p.name from report_people rp join people p on p.id = rp.person_id where rp.report_id = r.id and rp.lead) as who,
                          (select array_agg(distinct k.name || %1$s) from report_works w join task_kinds k on k.id = w.task_kind_id join installs i on i.id = w.install_id
                            where w.report_id = r.id and w.outcome = 'DONE') as done,
                          (select array_agg(distinct k.name || %1$s) from report_works w join task_kinds k on k.id = w.task_kind_id join installs i on i.id = w.install_id
                            where w.report_id = r.id and w.outcome = 'INSPECTED_GOOD') as good,
                          (select array_agg(distinct k.name || %1$s) from report_works w join task_kinds k on k.id = w.task_kind_id join installs i on i.id = w.install_id
                            where w.report_id = r.id and w.outcome = 'COULD_NOT') as undone,
                          (select array_agg(f.symptom || '|' || coalesce(%1$s, '') || '|' || coalesce(f.cause, '') || '|' || coalesce(f.action, ''))
                            from findings f left join installs i on i.id = f.install_id where f.report_id = r.id) as findings,
                          (select array_agg(g.value_si || '|' || %1$s order by g.place desc, g.id) from readings g join installs i on i.id = g.install_id
                            where g.report_id = r.id and g.quantity = 'DELIVERED_FLOW' and g.comparable) as delivered
                        from told join current_reports r on r.id = told.id
                          cross join (select count(*) > 1 as installs from installs where site_id = :site) several
                          cross join lateral (select count(*) as installs, min(i.name) as name from (
                              select install_id from report_works where report_id = r.id union select install_id from readings where report_id = r.id
                              union select install_id from findings where report_id = r.id) x join installs i on i.id = x.install_id) spoken
                        where (not exists (select from report_works w join installs i on i.id = w.install_id where w.report_id = r.id and i.site_id <> :site)
                            or exists (select from report_works w join installs i on i.id = w.install_id where w.report_id = r.id and i.site_id = :site)
                            or exists (select from readings g join installs i on i.id = g.install_id where g.report_id = r.id and i.site_id = :site))
                          and (:first or (r.attended_on, r.id) < (cast(:on as date), cast(:id as uuid)))
                        order by r.attended_on desc, r.id desc limit :most""".formatted(WHICH))
                .param("site", site.value())
                .param("first", after == null)
                .param("on", after == null ? LocalDate.EPOCH : after.on())
                .param("id", after == null ? site.value() : after.report())
                .param("most", most)
                .query((row, n) -> inWords(row))
                .list();
    }

    private VisitInWords inWords(ResultSet row) throws SQLException {
        ReportOutcome outcome = ReportOutcome.valueOf(row.getString("outcome"));
        String note = row.getString("note");
        return new VisitInWords(
                new ReportId(row.getObject("id", UUID.class)),
                row.getObject("attended_on", LocalDate.class),
                row.getString("who"),
                VisitKind.valueOf(row.getString("kind")),
                outcome,
                words.of(
                        row.getString("at"),
                        outcome,
                        row.getString("reason"),
                        strings(row.getArray("done")),
                        strings(row.getArray("good")),
                        strings(row.getArray("undone")),
                        strings(row.getArray("findings")),
                        strings(row.getArray("delivered")),
                        note),
                note == null || note.length() <= VisitWords.NOTE ? null : note,
                row.getString("promised"));
    }

    private static List<String> strings(@Nullable Array array) throws SQLException {
        return array == null ? List.of() : List.of((String[]) array.getArray());
    }

    List<ReadingPoint> readings(InstallId install) {
        return jdbc.sql("""
                        select g.*, r.attended_on, r.kind, i.name as instrument from readings g
                        join current_reports r on r.id = g.report_id left join instruments i on i.id = g.instrument_id
                        where g.install_id = :install order by r.attended_on, r.recorded_at, g.id""")
                .param("install", install.value())
                .query((row, n) -> point(row))
                .list();
    }

    private static ReadingPoint point(ResultSet row) throws SQLException {
        UUID pump = row.getObject("pump_id", UUID.class);
        return new ReadingPoint(
                new ReportId(row.getObject("report_id", UUID.class)),
                row.getObject("attended_on", LocalDate.class),
                VisitKind.valueOf(row.getString("kind")),
                pump == null ? null : new PumpId(pump),
                Quantity.valueOf(row.getString("quantity")),
                MeasuredAt.valueOf(row.getString("place")),
                row.getBigDecimal("value"),
                Unit.valueOf(row.getString("unit")).symbol(),
                row.getDouble("value_si"),
                row.getString("instrument"),
                row.getBoolean("comparable"),
                row.getString("not_comparable_reason"));
    }
}
