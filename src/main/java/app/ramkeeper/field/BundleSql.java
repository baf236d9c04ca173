package app.ramkeeper.field;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;

/** The bundle's sections, each one question to the database; each column becomes a field of the JSON. */
final class BundleSql {

    private static final int DAYS_AHEAD = 7;
    private static final int DUE_AHEAD = 60;

    private BundleSql() {}

    /** Whose bundle, of which day. */
    static Map<String, Object> whose(UUID person, LocalDate today) {
        return Map.of(
                "person",
                person,
                "today",
                today,
                "ahead",
                today.plusDays(DAYS_AHEAD),
                "due",
                today.plusDays(DUE_AHEAD));
    }

    /**
     * Photos and drawings of the sites of the week's own visits and of pinned ones: the site's own pictures, the gate first,
     * then the last eight photos of visits. Never a signature. The next visit's site comes first.
     */
    static final String PICTURES = """
            select x.key, x.site, x.kind, x.caption, x."on", case x.kind when 'DRAWING' then 1600 else 1000 end as side
            from (select v.site_id as site, min(v.planned_on) as first from visits v join visit_people me on me.visit_id = v.id and me.person_id = :person
                    where v.state = 'PLANNED' and v.planned_on between :today and :ahead group by v.site_id
                  union all select n.site_id, null from pinned_sites n where n.person_id = :person) mine
              join lateral (
                select encode(p.sha256, 'hex') as key, p.site_id as site, p.kind, p.caption, p.added_at::date as "on", p.id
                  from site_pictures p where p.site_id = mine.site
                union all (
                select encode(p.sha256, 'hex'), r.site_id, 'VISIT', p.caption, r.attended_on, p.id
                  from photos p join current_reports r on r.id = p.report_id
                  where r.site_id = mine.site and not exists (select 1 from field_photos f where f.sha256 = p.sha256 and f.kind = 'SIGNATURE')
                    and not exists (select 1 from site_pictures o where o.site_id = r.site_id and o.sha256 = p.sha256)
                  order by r.attended_on desc, p.id limit 8)) x on true
            group by 1, 2, 3, 4, 5, x.id order by min(mine.first) nulls last, x.site, position(x.kind in 'GATE DRAWING PLACE VISIT'), x."on" desc, x.id""";

    static final String SET_UPS = """
            select i.id, p.model_id as model, c.fall_m as fall, c.lift_m as lift,
              coalesce(b.drive_flow_si * 60000, c.design_drive_flow_l_min) as drive,
              c.delivery_pipe_bore_mm as bore, c.delivery_pipe_length_m as length, s.altitude_m as altitude
            from installs i join sites s on s.id = i.site_id
              join configurations c on c.install_id = i.id and daterange(c.from_date, c.until_date) @> :today::date
              left join baselines b on b.configuration_id = c.id
              left join lateral (select min(u.model_id::text)::uuid as model_id from pump_fittings f join pumps u on u.id = f.pump_id
                where f.install_id = i.id and f.until_date is null having count(distinct u.model_id) = 1) p on true
            where i.retired_on is null and c.lift_m > c.fall_m
              and coalesce(b.drive_flow_si * 60000, c.design_drive_flow_l_min) > 0
            order by i.id""";

    /** What the accepted quote of an install says of the dry month, l/day. */
    static final String PROMISES = """
            select distinct on (j.install_id) j.install_id as install, (r.design #>> '{perDay,p10}')::double precision as low,
              (r.design #>> '{perDay,p90}')::double precision as high
            from jobs j join quote_revisions r on r.quote_id = j.id and r.revision = j.revision
            where j.install_id is not null and r.design #>> '{perDay,p10}' is not null and r.design #>> '{perDay,p90}' is not null
            order by j.install_id, j.at desc""";

    static final Map<String, String> SECTIONS = new LinkedHashMap<>();

    static {
        SECTIONS.put("sites", """
                select s.id, s.reference as ref, s.name, s.locality, s.latitude as lat, s.longitude as lon, s.altitude_m as alt,
                  s.way_in as "wayIn", s.gate, s.walk_minutes as walk, s.source_kind as source, w.name as water, s.drinking_water as drinking,
                  c.name as catchment, c.biosecurity,
                  (select json_agg(json_build_object('kind', h.kind, 'text', h.text) order by h.kind, h.id) from site_hazards h where h.site_id = s.id) as hazards,
                  (select json_agg(json_build_array(a.weekday, to_char(a.from_time, 'HH24:MI'), to_char(a.until_time, 'HH24:MI')) order by a.weekday, a.from_time)
                    from access_windows a where a.site_id = s.id) as windows,
                  (select json_agg(json_build_object('from', p.from_date, 'until', p.until_date, 'reason', p.reason) order by p.from_date)
                    from closed_periods p where p.site_id = s.id and p.until_date >= :today) as closed,
                  (select json_agg(json_build_object('part', p.part, 'name', coalesce(k.name, cu.name), 'phone', coalesce(k.phone, cu.phone)) order by p.part, p.id)
                    from site_parties p left join contacts k on k.id = p.contact_id left join customers cu on cu.id = p.customer_id
                    where p.site_id = s.id and p.part <> 'PAYER' and daterange(p.from_date, p.until_date) @> :today::date) as people
                from sites s left join catchments c on c.id = s.catchment_id left join water_classes w on w.code = s.water_class
                where s.merged_into is null order by s.name, s.id""");
        SECTIONS.put("installs", """
                select i.id, i.site_id as site, i.name, i.commissioned_on as commissioned, i.commissioning_known as known, r.state, r.from_date as since,
                  c.fall_m as fall, c.lift_m as lift, c.valve_setting as setting, c.design_drive_flow_l_min as "designDrive",
                  c.design_delivered_l_min as "designDelivered", c.vessel_precharge_bar as precharge,
                  (select json_build_array(round(q.low), round(q.high)) from (""" + PROMISES + """
                    ) q where q.install = i.id) as promised,
                  case when b.id is not null then json_build_object('on', b.taken_on, 'drive', b.drive_flow_si, 'delivered', b.delivered_flow_si,
                    'beat', b.beat_rate_si, 'pressure', b.delivery_pressure_si) end as baseline,
                  (select json_agg(json_build_object('id', u.id, 'serial', u.serial, 'model', m.name, 'modelId', m.id, 'vessel', m.vessel_kind,
                      'bar', m.max_pressure_bar, 'loan', f.place = 'LOAN') order by f.place_no)
                    from pump_fittings f join pumps u on u.id = f.pump_id left join pump_models m on m.id = u.model_id
                    where f.install_id = i.id and f.until_date is null) as pumps,
                  (select json_agg(json_build_object('position', v.position, 'fitted', nullif(greatest(
                      coalesce((select max(o.fitted_on) from components o where o.install_id = i.id and o.removed_on is null and o.position = v.position), '-infinity'),
                      coalesce((select max(t.last_done_on) from service_tasks t join task_kinds k on k.id = t.task_kind_id
                        where t.install_id = i.id and t.ended_on is null and k.code = v.kind), '-infinity')), '-infinity')) order by v.position desc)
                    from (values ('WASTE_VALVE', 'CHANGE_WASTE_RUBBER'), ('DELIVERY_VALVE', 'CHANGE_DELIVERY_RUBBER')) v (position, kind)) as rubbers
                from installs i
                  left join running_states r on r.install_id = i.id and r.until_date is null
                  left join configurations c on c.install_id = i.id and daterange(c.from_date, c.until_date) @> :today::date
                  left join baselines b on b.configuration_id = c.id
                where i.retired_on is null order by i.id""");
        SECTIONS.put("lines", """
                select e.install_id as install, e.kind, e.name, e.latitude as lat, e.longitude as lon, e.note,
                  (select json_agg(json_build_object('kind', p.kind, 'at', p.chainage_m, 'level', p.level_m, 'lat', p.latitude, 'lon', p.longitude, 'note', p.note)
                    order by p.seq) from as_built_points p where p.element_id = e.id and (p.kind <> 'POINT' or p.note is not null)) as points
                from system_elements e join installs i on i.id = e.install_id where i.retired_on is null order by e.install_id, e.kind, e.name, e.id""");
        SECTIONS.put("tasks", """
                select t.id, t.install_id as install, t.pump_id as pump, t.task_kind_id as kind, t.due_on as due, t.window_until as until,
                  t.last_done_on as last, t.last_done_as as "lastAs"
                from service_tasks t where t.ended_on is null and t.done_by = 'US' and t.asleep_since is null
                  and (t.due_on <= :due or t.last_done_as = 'UNKNOWN') order by t.due_on nulls first, t.id""");
        SECTIONS.put("readings", """
                select distinct on (g.install_id, g.quantity, g.place) g.install_id as install, g.quantity, g.place, g.value, g.unit, g.value_si as si,
                  r.attended_on as "on", g.comparable
                from readings g join current_reports r on r.id = g.report_id
                order by g.install_id, g.quantity, g.place, r.attended_on desc, r.recorded_at desc, g.id""");
        SECTIONS.put("visits", """
                select v.id, v.site_id as site, v.attended_on as "on", v.kind, v.outcome, v.reason, v.note,
                  (select string_agg(p.name, ', ' order by rp.lead desc, p.name) from report_people rp join people p on p.id = rp.person_id where rp.report_id = v.id) as who,
                  (select string_agg(distinct k.name, ', ') from report_works w join task_kinds k on k.id = w.task_kind_id
                    where w.report_id = v.id and w.outcome = 'DONE') as done
                from (select r.*, row_number() over (partition by site_id order by attended_on desc, recorded_at desc, id) as n from current_reports r) v
                where v.n <= 3 order by v.site_id, v.n""");
        SECTIONS.put("followUps", """
                select f.id, f.site_id as site, f.text, f.due_on as due, f.promised from open_follow_ups f order by f.id""");
        SECTIONS.put("calls", """
                select c.site_id as site, c.symptom, i.name as install, c.people_dry as people, c.stock_dry as stock,
                  c.received_at + make_interval(mins => (60 * c.water_hours_left)::int) as dry, c.promised_by as promised, c.advice, c.note
                from calls c left join installs i on i.id = c.install_id where c.closed_at is null and c.site_id is not null
                order by c.promised_by nulls last, c.received_at, c.id""");
        SECTIONS.put("planned", """
                select v.id, v.site_id as site, v.kind, v.planned_on as "on", to_char(v.planned_from, 'HH24:MI') as "from", v.minutes, v.answer,
                  v.office_must_ring as ring, v.note, (select j.install_id from jobs j where j.commissioning_visit = v.id limit 1) as install,
                  v.changed_at as changed, v.planned_at as made,
                  (select json_agg(p.person_id order by p.lead desc) from visit_people p where p.visit_id = v.id and p.person_id <> :person) as others,
                  (select json_agg(t.task_id order by t.task_id) from visit_tasks t where t.visit_id = v.id) as tasks
                from visits v join visit_people me on me.visit_id = v.id and me.person_id = :person
                where v.state = 'PLANNED' and v.planned_on between :today and :ahead order by v.planned_on, v.planned_from nulls last, v.id""");
        SECTIONS.put("moved", """
                select v.id, v.state, v.planned_on as "on", to_char(v.planned_from, 'HH24:MI') as "from",
                  (select string_agg(p.name, ', ' order by w.lead desc, p.name) from visit_people w join people p on p.id = w.person_id where w.visit_id = v.id) as who
                from visits v
                where (v.state = 'PLANNED' and v.changed_at >= :today::date - 7
                    or v.state = 'CANCELLED' and v.planned_on between :today and :ahead)
                  and not exists (select from visit_people me where me.visit_id = v.id and me.person_id = :person
                    and v.state = 'PLANNED' and v.planned_on between :today and :ahead) order by v.id""");
        SECTIONS.put("asked", """
                select t.id, t.install_id as install, t.pump_id as pump, t.task_kind_id as kind, t.due_on as due
                from service_tasks t join visit_tasks vt on vt.task_id = t.id join visits v on v.id = vt.visit_id
                  join visit_people me on me.visit_id = v.id and me.person_id = :person
                where v.state = 'PLANNED' and v.planned_on between :today and :ahead order by t.id""");
        SECTIONS.put("water", """
                select x.site, x."on", x.reference, x.place, x.laboratory, x.remark, x.next, x.results, x.product, x.strength, x.minutes, x.flushed
                from (select r.site_id as site, coalesce(s.taken_on, r.attended_on) as "on", s.reference, s.place, s.laboratory, s.remark, s.next_on as next,
                    (select json_agg(json_build_object('parameter', w.parameter, 'value', w.value, 'unit', w.unit) order by w.seq)
                      from water_results w where w.sample_id = s.id) as results,
                    h.product, h.strength, h.contact_minutes as minutes, h.flushed, r.id,
                    row_number() over (partition by r.site_id order by r.attended_on desc, r.id, s.id) as n
                  from current_reports r left join water_samples s on s.report_id = r.id left join hygiene_records h on h.report_id = r.id
                  where s.id is not null or h.product is not null) x
                where x.n <= 3 order by x.site, x.n""");
        SECTIONS.put(
                "pins", "select n.site_id as site from pinned_sites n where n.person_id = :person order by n.site_id");
        SECTIONS.put("pictures", PICTURES);
        SECTIONS.put("kinds", """
                select k.id, k.code, k.name, (select json_agg(json_build_object('kind', n.part_kind, 'position', n.position, 'quantity', n.quantity)
                    order by n.part_kind, n.position) from task_kind_parts n where n.task_kind_id = k.id) as parts,
                  k.id in (select task_kind_id from part_changes) as changes
                from task_kinds k where k.withdrawn_on is null order by k.name, k.id""");
        SECTIONS.put("fits", """
                select m.model_id as model, p.id as part, p.name, p.kind, m.position, m.quantity from pump_model_parts m
                  join parts p on p.id = m.part_id where p.withdrawn_on is null order by m.model_id, m.position, p.number, p.id""");
        SECTIONS.put("van", """
                select p.id, p.number, p.name, p.unit, p.kind, sum(l.quantity) as quantity,
                  case when count(*) = 1 then nullif(min(l.batch), '') end as batch from stock_levels l join stock_places sp on sp.id = l.place_id
                  join parts p on p.id = l.part_id where sp.person_id = :person and l.quantity > 0 group by p.id order by p.name, p.id""");
        SECTIONS.put("causes", "select symptom, cause, action from field_causes order by symptom, seq");
        SECTIONS.put("checklists", """
                select distinct on (model_id) id, model_id as model, edition, items from field_checklists where kind = 'COMMISSIONING'
                order by model_id, edition desc""");
    }
}
