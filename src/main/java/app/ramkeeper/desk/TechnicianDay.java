package app.ramkeeper.desk;

import app.ramkeeper.identity.ForField;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** A technician's day: where next, what to do there, what to bring. */
@Service
@ForField
@Transactional(readOnly = true)
class TechnicianDay {

    private final JdbcClient jdbc;

    TechnicianDay(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A stop of the day in its order. */
    public record Stop(
            UUID visitId,
            UUID siteId,
            String site,
            @Nullable String locality,
            String kind,
            @Nullable LocalTime plannedFrom,
            int minutes,
            String answer,
            boolean officeMustRing,
            String state,
            @Nullable String wayIn,
            @Nullable String gate,
            @Nullable String hazards,
            @Nullable String tasks,
            @Nullable String note,
            @Nullable String promised,
            String biosecurity,
            boolean drinkingWater,
            @Nullable Instant changedAt) {}

    /** A part to take along, over all stops of the day. */
    public record Bring(
            String name, String number, java.math.BigDecimal quantity, String unit, java.math.BigDecimal inVan) {}

    /** How many stops a later day has. */
    public record Ahead(LocalDate day, int visits) {}

    List<Stop> stops(UUID person, LocalDate day) {
        return jdbc.sql("""
                        select v.id as visit_id, v.site_id, s.name as site, s.locality, v.kind, v.planned_from, v.minutes, v.answer, v.office_must_ring,
                          v.state, s.way_in, s.gate, v.note, coalesce(c.biosecurity, 'CLEAN') as biosecurity, s.drinking_water,
                          (select max(w.changed_at) from week_stops w where w.visit_id = v.id and w.published_on = v.planned_on) as changed_at,
                          (select string_agg(lower(replace(h.kind, '_', ' ')) || coalesce(': ' || rtrim(h.text, '. '), ''), '; ' order by h.kind) from site_hazards h where h.site_id = s.id) as hazards,
                          (select string_agg(distinct k.name, ', ') from visit_tasks vt join task_kinds k on k.id = vt.task_kind_id where vt.visit_id = v.id) as tasks,
                          (select string_agg(case when f.promised then 'promised: ' else '' end || rtrim(f.text, '. '), '; ' order by f.promised desc, f.due_on, f.id)
                            from open_follow_ups f where f.site_id = s.id) as promised
                        from visits v join visit_people vp on vp.visit_id = v.id and vp.person_id = :person
                          join sites s on s.id = v.site_id left join catchments c on c.id = s.catchment_id
                        where v.planned_on = :day and v.state <> 'CANCELLED' order by v.planned_from nulls last, v.id""")
                .param("person", person)
                .param("day", day)
                .query(Stop.class)
                .list();
    }

    List<Bring> bring(UUID person, LocalDate day) {
        return jdbc.sql("""
                        select n.name, n.number, n.unit, sum(n.quantity) as quantity,
                          coalesce((select sum(l.quantity) from stock_levels l join stock_places sp on sp.id = l.place_id
                             where sp.person_id = :person and l.part_id = n.part_id), 0) as in_van
                        from visits v join visit_people vp on vp.visit_id = v.id and vp.person_id = :person
                          join visit_tasks vt on vt.visit_id = v.id
                          left join service_tasks st on st.id = vt.task_id
                          join install_task_parts n on n.install_id = vt.install_id and n.task_kind_id = vt.task_kind_id
                            and (st.pump_id is null or st.pump_id = n.pump_id)
                        where v.planned_on = :day and v.state = 'PLANNED'
                        group by n.part_id, n.name, n.number, n.unit order by n.name""")
                .param("person", person)
                .param("day", day)
                .query(Bring.class)
                .list();
    }

    List<Ahead> ahead(UUID person, LocalDate after) {
        return jdbc.sql("""
                        select v.planned_on as day, count(*)::int as visits from visits v join visit_people vp on vp.visit_id = v.id and vp.person_id = :person
                        where v.planned_on > :after and v.planned_on <= :after::date + 7 and v.state = 'PLANNED' group by v.planned_on order by v.planned_on""")
                .param("person", person)
                .param("after", after)
                .query(Ahead.class)
                .list();
    }
}
