package app.ramkeeper.rounds.travel;

import app.ramkeeper.identity.ForSetup;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.Uuids;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Parts of the map with roads of their own kind; estimates use them, legs that a travel service gave do not. */
@Service
@ForSetup
@Transactional
public class TravelAreas {

    private final LegStore store;
    private final JdbcClient jdbc;

    TravelAreas(LegStore store, JdbcClient jdbc) {
        this.store = store;
        this.jdbc = jdbc;
    }

    @Transactional(readOnly = true)
    public List<Area> all() {
        return store.areas();
    }

    /** The area; one that is not there is missing. */
    @Transactional(readOnly = true)
    public Area byId(UUID id) {
        return store.areas().stream()
                .filter(area -> area.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new Missing("travel area", id));
    }

    /** Adds an area, or changes the one with this id. */
    public void save(Area area) {
        jdbc.sql("""
                        insert into travel_areas (id, name, south, west, north, east, road_factor, speed_km_h) values (?, ?, ?, ?, ?, ?, ?, ?)
                        on conflict (id) do update set name = excluded.name, south = excluded.south, west = excluded.west, north = excluded.north,
                          east = excluded.east, road_factor = excluded.road_factor, speed_km_h = excluded.speed_km_h""")
                .params(
                        area.id(),
                        area.name(),
                        area.south(),
                        area.west(),
                        area.north(),
                        area.east(),
                        area.roadFactor(),
                        area.speedKmH())
                .update();
    }

    public void remove(UUID id) {
        jdbc.sql("delete from travel_areas where id = ?").param(byId(id).id()).update();
    }

    /** An id for an area that is new. */
    public static UUID fresh() {
        return Uuids.next();
    }
}
