package app.ramkeeper.visits;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.PumpId;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.shared.OneStatement;
import app.ramkeeper.shared.Unit;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads how a site stands, by one statement; readings are told apart by pump only where several work side by side. */
@Repository
class SiteNowQuery {

    private static final OneStatement NOW = new OneStatement()
            .list("readings", """
                    select distinct on (g.install_id, g.quantity, g.place, several.pump) g.install_id, g.report_id, r.attended_on, r.kind, g.pump_id,
                      g.quantity, g.place, g.value, g.unit, g.value_si, i.name as instrument, g.comparable, g.not_comparable_reason
                    from installs s join readings g on g.install_id = s.id
                    join current_reports r on r.id = g.report_id left join instruments i on i.id = g.instrument_id
                    left join lateral (select g.pump_id as pump from pump_fittings f
                      where f.install_id = s.id and f.until_date is null having count(*) > 1) several on true
                    where s.site_id = :site
                    order by g.install_id, g.quantity, g.place, several.pump, r.attended_on desc, r.recorded_at desc""")
            .list("follow_ups", """
                    select f.id, json_build_object('value', r.id) as report, r.attended_on as since, f.text, f.due_on, f.promised
                    from follow_ups f join current_reports r on r.id = f.report_id
                    where f.site_id = :site and f.done_on is null order by f.promised desc, f.due_on nulls last, r.attended_on, f.id""")
            .list("planned", """
                    select json_build_object('value', v.id) as id, json_build_object('value', v.site_id) as site, v.site_name, v.locality, v.kind, v.state,
                      v.planned_on as on, v.planned_from as from, v.minutes, coalesce(v.people, '{}') as people, coalesce(v.tasks, '{}') as tasks,
                      v.answer, v.attempts, v.office_must_ring, v.note
                    from (""" + PlanQueries.PLANNED + """
                    where v.state = 'PLANNED' and v.site_id = :site order by v.planned_on nulls last, v.id) v""")
            .list(
                    "pictures",
                    "select id, kind, caption from site_pictures where site_id = :site order by added_at desc, id");

    private final JdbcClient jdbc;

    SiteNowQuery(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    SiteNow of(SiteId site) {
        Lists lists = NOW.read(jdbc, Map.of("site", site.value()), Lists.class);
        return new SiteNow(
                lists.readings().stream().map(Reading::last).toList(),
                lists.followUps(),
                lists.planned(),
                lists.pictures().size(),
                lists.pictures().stream()
                        .filter(picture -> picture.kind().equals("GATE"))
                        .findFirst()
                        .map(picture -> new SiteNow.Gate(picture.id(), picture.caption()))
                        .orElse(null));
    }

    record Lists(
            List<Reading> readings, List<OpenFollowUp> followUps, List<PlannedVisit> planned, List<Picture> pictures) {}

    record Picture(UUID id, String kind, @Nullable String caption) {}

    record Reading(
            UUID installId,
            UUID reportId,
            LocalDate attendedOn,
            VisitKind kind,
            @Nullable UUID pumpId,
            Quantity quantity,
            MeasuredAt place,
            BigDecimal value,
            Unit unit,
            double valueSi,
            @Nullable String instrument,
            boolean comparable,
            @Nullable String notComparableReason) {

        SiteNow.LastReading last() {
            return new SiteNow.LastReading(
                    new InstallId(installId),
                    new ReadingPoint(
                            new ReportId(reportId),
                            attendedOn,
                            kind,
                            pumpId == null ? null : new PumpId(pumpId),
                            quantity,
                            place,
                            value,
                            unit.symbol(),
                            valueSi,
                            instrument,
                            comparable,
                            notComparableReason));
        }
    }
}
