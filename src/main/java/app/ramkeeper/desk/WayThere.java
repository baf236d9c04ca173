package app.ramkeeper.desk;

import app.ramkeeper.fleet.Position;
import app.ramkeeper.fleet.SiteCard;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** How far and in which direction a site lies from the depot that looks after it. */
final class WayThere {

    private static final List<String> COMPASS = List.of("N", "NE", "E", "SE", "S", "SW", "W", "NW");

    private WayThere() {}

    /** "23 km NW of Clyde depot", as the crow flies; absent where either position is unknown. */
    static @Nullable String of(SiteCard site) {
        Position here = site.position();
        Position depot = site.depotPosition();
        return here == null || depot == null ? null : words(depot, here, String.valueOf(site.depotName()));
    }

    private static String words(Position from, Position to, String name) {
        double kilometres = from.kilometresTo(to);
        String compass = COMPASS.get((int) Math.round(from.bearingTo(to) / 45) % 8);
        return String.format(
                Locale.ROOT, kilometres < 10 ? "%.1f km %s of %s" : "%.0f km %s of %s", kilometres, compass, name);
    }
}
