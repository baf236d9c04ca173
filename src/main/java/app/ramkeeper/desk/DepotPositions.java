package app.ramkeeper.desk;

import app.ramkeeper.fleet.Position;
import app.ramkeeper.fleet.SiteCard;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** How far and in which direction a site lies from the depot that looks after it. */
@Component
class DepotPositions {

    private static final List<String> COMPASS = List.of("N", "NE", "E", "SE", "S", "SW", "W", "NW");

    private final JdbcClient jdbc;

    DepotPositions(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** "23 km NW of Clyde depot", as the crow flies; absent where either position is unknown. */
    @Nullable
    String wayTo(SiteCard site) {
        Position here = site.position();
        if (here == null || site.depot() == null) {
            return null;
        }
        return jdbc.sql("select latitude, longitude from depots where id = ? and latitude is not null")
                .param(site.depot().value())
                .query((row, number) -> new Position(row.getDouble(1), row.getDouble(2)))
                .optional()
                .map(depot -> words(depot, here, String.valueOf(site.depotName())))
                .orElse(null);
    }

    static String words(Position from, Position to, String name) {
        double kilometres = from.kilometresTo(to);
        String compass = COMPASS.get((int) Math.round(from.bearingTo(to) / 45) % 8);
        return String.format(
                Locale.ROOT, kilometres < 10 ? "%.1f km %s of %s" : "%.0f km %s of %s", kilometres, compass, name);
    }
}
