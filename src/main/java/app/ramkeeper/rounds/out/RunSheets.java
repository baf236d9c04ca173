package app.ramkeeper.rounds.out;

import app.ramkeeper.fleet.Position;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.rounds.week.DayTimes.Line;
import app.ramkeeper.rounds.week.OpenCalls.OpenCall;
import app.ramkeeper.rounds.week.TechDay;
import app.ramkeeper.rounds.week.Week;
import io.jenetics.jpx.GPX;
import io.jenetics.jpx.WayPoint;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What a technician takes along for a day: each stop with its way in, hazards and tasks, the parts to load, and the track. */
@Service
@ForField
@Transactional(readOnly = true)
public class RunSheets {

    private final JdbcClient jdbc;

    RunSheets(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * What is known of a site that matters at its gate.
     *
     * @param ring whom to ring first: the occupier, else who holds the key, else the owner; whoever has a number goes before
     * @param keys the other occupiers and key holders
     */
    public record Place(
            UUID siteId,
            @Nullable String wayIn,
            @Nullable String gate,
            int walkMinutes,
            boolean drinkingWater,
            @Nullable String hazards,
            @Nullable String promised,
            @Nullable String ring,
            @Nullable String keys) {}

    /** A stop of the sheet, in the round's order. */
    public record Entry(
            Line line, @Nullable Place place, @Nullable OpenCall call, List<Lack> lacks) {}

    /**
     * A part that a task asks for without the catalogue knowing which.
     *
     * @param model null while the pump's model is not known
     * @param lastUsed what the last report put down that may be the same part
     */
    public record Lack(
            UUID stopId,
            String install,
            @Nullable String serial,
            @Nullable String model,
            String task,
            String partKind,
            String position,
            BigDecimal quantity,
            @Nullable BigDecimal boreMm,
            @Nullable String lastUsed) {

        public String pump() {
            return serial == null ? install : install + ", pump " + serial;
        }

        public String bore() {
            return boreMm == null ? "" : boreMm.stripTrailingZeros().toPlainString();
        }
    }

    /** A part of the load. */
    public record Load(
            String part, String number, BigDecimal needed, BigDecimal inVan, BigDecimal atDepot, String unit) {

        /** What is missing after van and depot: to buy. */
        public BigDecimal toBuy() {
            return needed.subtract(inVan).subtract(atDepot).max(BigDecimal.ZERO);
        }

        /** What is to be taken from the depot. */
        public BigDecimal toLoad() {
            return needed.subtract(inVan).max(BigDecimal.ZERO).min(atDepot.max(BigDecimal.ZERO));
        }
    }

    /** The round's stops with what is known of their sites. */
    public List<Entry> entries(Week week, TechDay round) {
        List<Line> lines = week.times(round.key()).lines();
        UUID[] sites = lines.stream().map(l -> l.stop().siteId()).distinct().toArray(UUID[]::new);
        Map<UUID, Place> places =
                jdbc.sql("""
                        select s.id as site_id, s.way_in, s.gate, coalesce(s.walk_minutes, 0) as walk_minutes, s.drinking_water,
                          (select string_agg(lower(replace(h.kind, '_', ' ')) || coalesce(': ' || rtrim(h.text, '. '), ''), '; ' order by h.kind)
                             from site_hazards h where h.site_id = s.id) as hazards,
                          (select string_agg(case when f.promised then 'promised' || coalesce(to_char(f.due_on, '" by "Dy FMDD Mon'), '') || ': ' else '' end || rtrim(f.text, '. '), '; '
                             order by f.promised desc, f.due_on, f.id) from open_follow_ups f where f.site_id = s.id) as promised,
                          who.ring, who.keys
                        from sites s left join lateral (
                          select string_agg(r.word, '; ' order by r.word) filter (where r.place = 1) as ring,
                            string_agg(r.word, '; ' order by r.word) filter (where r.place > 1 and r.part <> 'OWNER') as keys
                          from (select d.*, rank() over (order by d.phone is null, d.near) as place,
                              d.name || ' (' || lower(replace(d.part, '_', ' ')) || ')' || coalesce(', ' || d.phone, ', no number known') as word
                            from (select distinct on (coalesce(p.contact_id, p.customer_id)) p.part, coalesce(c.name, u.name) as name,
                                coalesce(c.phone, u.phone) as phone, array_position(array['OCCUPIER', 'KEY_HOLDER', 'OWNER'], p.part) as near
                              from site_parties p left join contacts c on c.id = p.contact_id left join customers u on u.id = p.customer_id
                              where p.site_id = s.id and p.part in ('OCCUPIER', 'KEY_HOLDER', 'OWNER')
                                and (p.from_date is null or p.from_date <= :day) and (p.until_date is null or p.until_date > :day)
                              order by coalesce(p.contact_id, p.customer_id), near) d) r) who on true
                        where s.id = any(:ids)""").param("ids", sites).param("day", round.day()).query(Place.class).list().stream()
                        .collect(Collectors.toMap(Place::siteId, place -> place));
        Map<UUID, List<Lack>> lacks = lacks(lines).stream().collect(Collectors.groupingBy(Lack::stopId));
        return lines.stream()
                .map(line -> new Entry(
                        line,
                        places.get(line.stop().siteId()),
                        line.stop().over() ? null : week.calls().get(line.stop().siteId()),
                        lacks.getOrDefault(line.stop().id(), List.of())))
                .toList();
    }

    /** What tasks ask for at pumps whose model is unknown, or has no such part in the catalogue. */
    private List<Lack> lacks(List<Line> lines) {
        return jdbc.sql("""
                        select t.stop_id, i.name as install, u.serial, m.name as model, k.name as task, kp.part_kind, kp.position, kp.quantity,
                          (select c.drive_pipe_bore_mm::numeric from configurations c where c.install_id = i.id and c.until_date is null limit 1) as bore_mm,
                          (select coalesce(p.name || ' ' || p.number, x.part_text) from parts_used x join current_reports r on r.id = x.report_id
                             left join parts p on p.id = x.part_id
                             where x.install_id = i.id and (x.pump_id is null or x.pump_id = u.id) and (p.id is null or p.kind = kp.part_kind)
                             order by r.attended_on desc, p.id is null, x.id limit 1) as last_used
                        from week_stop_tasks t join service_tasks st on st.id = t.task_id join installs i on i.id = t.install_id
                          join task_kinds k on k.id = t.task_kind_id join task_kind_parts kp on kp.task_kind_id = k.id
                          join pump_fittings f on f.install_id = i.id and f.until_date is null and (st.pump_id is null or st.pump_id = f.pump_id)
                          join pumps u on u.id = f.pump_id left join pump_models m on m.id = u.model_id
                        where t.stop_id = any(:stops) and not exists (select from pump_model_parts mp
                            join parts p on p.id = mp.part_id and p.withdrawn_on is null
                          where mp.model_id = u.model_id and p.kind = kp.part_kind and (kp.position = '' or kp.position = mp.position))
                        order by t.stop_id, i.name, f.place_no, k.name, kp.part_kind, kp.position""")
                .param("stops", lines.stream().map(l -> l.stop().id()).toArray(UUID[]::new))
                .query(Lack.class)
                .list();
    }

    /** The parts that a technician's visits of some days ask for, against van and depot. */
    public List<Load> loads(UUID plan, UUID person, @Nullable UUID depot, List<TechDay> rounds) {
        if (rounds.isEmpty()) {
            return List.of();
        }
        return jdbc.sql("""
                        select n.name as part, n.number, n.unit, sum(n.quantity) as needed,
                          coalesce((select sum(l.quantity) from stock_levels l join stock_places sp on sp.id = l.place_id
                             where sp.person_id = :person and l.part_id = n.part_id), 0) as in_van,
                          coalesce((select sum(l.quantity) from stock_levels l join stock_places sp on sp.id = l.place_id
                             where sp.kind = 'DEPOT' and sp.depot_id = :depot::uuid and l.part_id = n.part_id), 0) as at_depot
                        from week_stops w join week_stop_tasks t on t.stop_id = w.id
                          join service_tasks st on st.id = t.task_id
                          join install_task_parts n on n.install_id = t.install_id and n.task_kind_id = t.task_kind_id
                            and (st.pump_id is null or st.pump_id = n.pump_id)
                        where w.plan_id = :plan and w.person_id = :person and w.day = any(:days)
                        group by n.part_id, n.name, n.number, n.unit order by n.name""")
                .param("plan", plan)
                .param("person", person)
                .param("depot", depot)
                .param(
                        "days",
                        rounds.stream().map(r -> java.sql.Date.valueOf(r.day())).toArray(java.sql.Date[]::new))
                .query(Load.class)
                .list();
    }

    /** The round as a route of GPX 1.1, which any navigator reads. */
    public byte[] track(Week week, TechDay round) {
        List<WayPoint> points = new ArrayList<>();
        add(points, round.start(), "Start");
        week.times(round.key())
                .lines()
                .forEach(line -> add(points, line.stop().where(), line.stop().site()));
        add(points, round.end(), "End");
        GPX track = GPX.builder("Ramkeeper")
                .addRoute(route -> route.name(round.name() + " " + round.day()).points(points))
                .build();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            GPX.Writer.DEFAULT.write(track, bytes);
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
        return bytes.toByteArray();
    }

    private static void add(List<WayPoint> points, @Nullable Position where, String name) {
        if (where != null) {
            points.add(WayPoint.builder()
                    .lat(where.latitude())
                    .lon(where.longitude())
                    .name(name)
                    .build());
        }
    }
}
