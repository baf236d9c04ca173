package app.ramkeeper.rounds.travel;

import app.ramkeeper.fleet.Position;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Keeps what the table service said, by ordered pair of places. */
@Repository
class LegStore {

    private final JdbcClient jdbc;

    LegStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A place to about a metre. */
    record Spot(int lat, int lon) {
        static Spot of(Position place) {
            return new Spot((int) Math.round(place.latitude() * 1e5), (int) Math.round(place.longitude() * 1e5));
        }
    }

    /** An ordered pair. */
    record Pair(Spot from, Spot to) {}

    /** A leg with its pair. */
    record Known(Pair pair, Leg leg) {}

    Map<Pair, Leg> among(Collection<Position> places) {
        List<Spot> spots = places.stream().map(Spot::of).distinct().toList();
        Map<Pair, Leg> known = new HashMap<>();
        jdbc.sql("""
                        with spots as (select * from unnest(:lats::int[], :lons::int[]) as s(lat, lon))
                        select l.from_lat, l.from_lon, l.to_lat, l.to_lon, l.minutes, l.metres
                        from spots a join travel_legs l on l.from_lat = a.lat and l.from_lon = a.lon
                          join spots b on l.to_lat = b.lat and l.to_lon = b.lon""")
                .param("lats", spots.stream().map(Spot::lat).toArray(Integer[]::new))
                .param("lons", spots.stream().map(Spot::lon).toArray(Integer[]::new))
                .query(row -> {
                    known.put(
                            new Pair(new Spot(row.getInt(1), row.getInt(2)), new Spot(row.getInt(3), row.getInt(4))),
                            new Leg(row.getDouble(5), row.getDouble(6)));
                });
        return known;
    }

    void keep(List<Known> legs, Instant now) {
        jdbc.sql("""
                        insert into travel_legs (from_lat, from_lon, to_lat, to_lon, minutes, metres, asked_at)
                        select l.*, :now from unnest(:fromLat::int[], :fromLon::int[], :toLat::int[], :toLon::int[],
                          :minutes::real[], :metres::real[]) as l(from_lat, from_lon, to_lat, to_lon, minutes, metres)
                        on conflict (from_lat, from_lon, to_lat, to_lon)
                          do update set minutes = excluded.minutes, metres = excluded.metres, asked_at = excluded.asked_at""")
                .param("fromLat", legs.stream().map(l -> l.pair().from().lat()).toArray(Integer[]::new))
                .param("fromLon", legs.stream().map(l -> l.pair().from().lon()).toArray(Integer[]::new))
                .param("toLat", legs.stream().map(l -> l.pair().to().lat()).toArray(Integer[]::new))
                .param("toLon", legs.stream().map(l -> l.pair().to().lon()).toArray(Integer[]::new))
                .param(
                        "minutes",
                        legs.stream().map(l -> (float) l.leg().minutes()).toArray(Float[]::new))
                .param(
                        "metres",
                        legs.stream().map(l -> (float) l.leg().metres()).toArray(Float[]::new))
                .param("now", Timestamp.from(now))
                .update();
    }

    List<Area> areas() {
        return jdbc.sql(
                        "select id, name, south, west, north, east, road_factor, speed_km_h, version from travel_areas order by name")
                .query(Area.class)
                .list();
    }
}
