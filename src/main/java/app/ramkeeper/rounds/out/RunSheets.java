package app.ramkeeper.rounds.out;

import app.ramkeeper.fleet.Position;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.rounds.week.DayTimes.Line;
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

    /** What is known of a site that matters at its gate. */
    public record Place(
            UUID siteId,
            @Nullable String wayIn,
            @Nullable String gate,
            int walkMinutes,
            boolean drinkingWater,
            @Nullable String hazards,
            @Nullable String promised,
            @Nullable String keys) {}

    /** A stop of the sheet, in the round's order. */
    public record Entry(Line line, @Nullable Place place) {}

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
                          (select string_agg(lower(replace(h.kind, '_', ' ')) || coalesce(': ' || h.text, ''), '; ' order by h.kind)
                             from site_hazards h where h.site_id = s.id) as hazards,
                          (select string_agg(f.text, '; ') from follow_ups f where f.site_id = s.id and f.done_on is null) as promised,
                          (select string_agg(distinct coalesce(c.name, u.name) || coalesce(', ' || coalesce(c.phone, u.phone), ''), '; ')
                             from site_parties p left join contacts c on c.id = p.contact_id left join customers u on u.id = p.customer_id
                             where p.site_id = s.id and p.part in ('OWNER', 'KEY_HOLDER', 'OCCUPIER')
                               and (p.from_date is null or p.from_date <= :day) and (p.until_date is null or p.until_date > :day)) as keys
                        from sites s where s.id = any(:ids)""").param("ids", sites).param("day", round.day()).query(Place.class).list().stream()
                        .collect(Collectors.toMap(Place::siteId, place -> place));
        return lines.stream()
                .map(line -> new Entry(line, places.get(line.stop().siteId())))
                .toList();
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
