package app.ramkeeper.rounds.travel;

import app.ramkeeper.identity.ForSetup;
import app.ramkeeper.rounds.RoundsSettings;
import app.ramkeeper.shared.Conflict;
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
    private final RoundsSettings settings;
    private final JdbcClient jdbc;

    TravelAreas(LegStore store, RoundsSettings settings, JdbcClient jdbc) {
        this.store = store;
        this.settings = settings;
        this.jdbc = jdbc;
    }

    /** What estimates reckon with outside all areas, in words. */
    public String usual() {
        return Estimate.usual(settings.roadFactor());
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

    /**
     * Adds an area, or changes the one with this id.
     *
     * @return false if somebody else has changed it since the version that it carries; then nothing is done
     */
    public boolean save(Area area) {
        return jdbc.sql("""
                        insert into travel_areas as a (id, name, south, west, north, east, road_factor, speed_km_h) values (?, ?, ?, ?, ?, ?, ?, ?)
                        on conflict (id) do update set name = excluded.name, south = excluded.south, west = excluded.west, north = excluded.north,
                          east = excluded.east, road_factor = excluded.road_factor, speed_km_h = excluded.speed_km_h, version = a.version + 1
                          where a.version = ?""")
                        .params(
                                area.id(),
                                area.name(),
                                area.south(),
                                area.west(),
                                area.north(),
                                area.east(),
                                area.roadFactor(),
                                area.speedKmH(),
                                area.version())
                        .update()
                > 0;
    }

    /**
     * Removes an area.
     *
     * @throws Conflict if somebody else has changed it since the version that was seen
     */
    public void remove(UUID id, int seen) {
        Area area = byId(id);
        int removed = jdbc.sql("delete from travel_areas where id = ? and version = ?")
                .params(id, seen)
                .update();
        if (removed == 0) {
            throw new Conflict("Somebody else has changed the area \"" + area.name()
                    + "\" meanwhile, so it was not removed. Look at it once more first.");
        }
    }

    /** An id for an area that is new. */
    public static UUID fresh() {
        return Uuids.next();
    }
}
