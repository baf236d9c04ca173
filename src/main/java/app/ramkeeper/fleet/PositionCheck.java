package app.ramkeeper.fleet;

import java.util.List;
import java.util.Optional;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Doubts a position that lies far from every depot: latitude and longitude may be swapped, or a sign lost. */
@Component
@EnableConfigurationProperties(FleetSettings.class)
public class PositionCheck {

    /**
     * Why a position is doubted.
     *
     * @param kilometres to the nearest depot
     * @param better the same numbers swapped, or with the other sign, if that lies in the area
     */
    public record Doubt(double kilometres, Optional<Position> better) {}

    private final JdbcClient jdbc;
    private final FleetSettings settings;

    PositionCheck(JdbcClient jdbc, FleetSettings settings) {
        this.jdbc = jdbc;
        this.settings = settings;
    }

    /** The doubt about a position; none if it is plausible, or if no depot has a position to compare with. */
    public Optional<Doubt> doubt(Position position) {
        return doubt(position, depots());
    }

    /** Where the depots are, to check many positions with. */
    public List<Position> depots() {
        return jdbc.sql("select latitude, longitude from depots where latitude is not null")
                .query((rs, n) -> new Position(rs.getDouble(1), rs.getDouble(2)))
                .list();
    }

    /** The doubt about a position, with the depots read before. */
    public Optional<Doubt> doubt(Position position, List<Position> depots) {
        if (depots.isEmpty() || near(position, depots)) {
            return Optional.empty();
        }
        Optional<Position> better =
                position.slips().stream().filter(p -> near(p, depots)).findFirst();
        return Optional.of(new Doubt(distance(position, depots), better));
    }

    private boolean near(Position position, List<Position> depots) {
        return distance(position, depots) <= settings.areaKm();
    }

    private static double distance(Position position, List<Position> depots) {
        return depots.stream().mapToDouble(position::kilometresTo).min().orElse(0);
    }
}
