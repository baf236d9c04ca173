package app.ramkeeper.demo;

import app.ramkeeper.fleet.Position;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.JdbcTemplate;

/** Days that a technician could drive: sites of one depot near each other, with time for the road and the break between them. */
final class DemoRounds {

    static final int MINUTES = 60;

    private static final int SETS_OUT = 7 * 60 + 40;
    private static final double MINUTES_A_KM = 2.4;

    private final JdbcTemplate jdbc;
    private final Set<UUID> used = new HashSet<>();

    DemoRounds(JdbcTemplate jdbc) {
        this.jdbc = jdbc;
    }

    /** A visit of a day. */
    record Stop(UUID site, LocalTime from) {}

    private record Spot(UUID site, Position where) {}

    /** The next day of a depot: each stop the nearest to the one before that nobody has yet. */
    List<Stop> day(UUID depot, int visits) {
        List<Spot> spots = jdbc.query(
                """
                        select s.id, s.latitude, s.longitude from sites s join catchments c on c.id = s.catchment_id
                        where s.depot_id = ? and s.latitude is not null and c.biosecurity = 'CLEAN' and exists (select from installs i where i.site_id = s.id)
                          and not exists (select from site_hazards h where h.site_id = s.id and h.kind in ('CONFINED_SPACE', 'HEAVY_LIFT'))
                        order by s.reference""",
                (row, n) -> new Spot(row.getObject(1, UUID.class), new Position(row.getDouble(2), row.getDouble(3))),
                depot);
        Position at = jdbc.queryForObject(
                "select latitude, longitude from depots where id = ?",
                (row, n) -> new Position(row.getDouble(1), row.getDouble(2)),
                depot);
        List<Stop> day = new ArrayList<>();
        double now = SETS_OUT;
        boolean rested = false;
        for (int i = 0; i < visits && at != null; i++) {
            Position here = at;
            Spot next = spots.stream()
                    .filter(spot -> !used.contains(spot.site()))
                    .min(Comparator.comparingDouble(spot -> spot.where().kilometresTo(here)))
                    .orElse(null);
            if (next == null) {
                break;
            }
            used.add(next.site());
            now += 10 + MINUTES_A_KM * next.where().kilometresTo(here);
            if (!rested && now > 11.5 * 60) {
                rested = true;
                now += 45;
            }
            now = Math.ceil(now / 15) * 15;
            day.add(new Stop(next.site(), LocalTime.ofSecondOfDay(60L * (long) now)));
            now += MINUTES;
            at = next.where();
        }
        return day;
    }
}
