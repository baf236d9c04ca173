package app.ramkeeper.rounds.travel;

import app.ramkeeper.fleet.Position;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Travel without a map: the great circle times a road factor, at a speed that grows with the distance; what of the way
 * lies in an area, by the roads of that area.
 *
 * <p>Road factors are published by country: R. H. Ballou, H. Rahardja, N. Sakai, "Selected country circuity factors for
 * road travel distance estimation", Transportation Research Part A 36(9), 2002, 843-848; from memory about 1.2 for flat
 * countries with dense roads, 1.4 for England, and 2 where mountains and water stand in the way. The speeds are common
 * practice, without source: slow to the main road, faster on it.
 */
final class Estimate implements Legs {

    private static final double SLOW_KM = 4;
    private static final double SLOW_SPEED = 35;
    private static final double MIDDLE_KM = 16;
    private static final double MIDDLE_SPEED = 60;
    private static final double FAST_SPEED = 80;

    /** Into so many pieces a way is cut to see which areas it crosses. */
    private static final int PIECES = 20;

    private final double roadFactor;
    private final List<Area> areas;

    /** Where areas overlap, the smallest counts. */
    Estimate(double roadFactor, List<Area> areas) {
        this.roadFactor = roadFactor;
        this.areas =
                areas.stream().sorted(Comparator.comparingDouble(Area::area)).toList();
    }

    /** What counts outside areas, in words. */
    static String usual(double roadFactor) {
        return "%s times the distance as the crow flies, at %.0f km/h for the first %.0f km, %.0f km/h for the next %.0f km, and %.0f km/h beyond"
                .formatted(
                        java.math.BigDecimal.valueOf(roadFactor)
                                .stripTrailingZeros()
                                .toPlainString(),
                        SLOW_SPEED,
                        SLOW_KM,
                        MIDDLE_SPEED,
                        MIDDLE_KM,
                        FAST_SPEED);
    }

    @Override
    public Leg between(Position from, Position to) {
        double straight = from.kilometresTo(to);
        if (areas.isEmpty()) {
            double road = straight * roadFactor;
            return new Leg(minutes(road), 1000 * road);
        }
        double piece = straight / PIECES;
        double outside = 0;
        double road = 0;
        double minutes = 0;
        for (int i = 0; i < PIECES; i++) {
            Area area = at(from, to, (i + 0.5) / PIECES);
            if (area == null) {
                outside += piece * roadFactor;
            } else {
                road += piece * area.roadFactor();
                minutes += 60 * piece * area.roadFactor() / area.speedKmH();
            }
        }
        return new Leg(minutes + minutes(outside), 1000 * (road + outside));
    }

    /** The area at a share of the way, as the crow flies; null outside all. */
    private @Nullable Area at(Position from, Position to, double share) {
        Position there = new Position(
                from.latitude() + share * (to.latitude() - from.latitude()),
                from.longitude() + share * (to.longitude() - from.longitude()));
        return areas.stream().filter(area -> area.holds(there)).findFirst().orElse(null);
    }

    private static double minutes(double km) {
        double slow = Math.min(km, SLOW_KM);
        double middle = Math.min(km - slow, MIDDLE_KM);
        return 60 * (slow / SLOW_SPEED + middle / MIDDLE_SPEED + (km - slow - middle) / FAST_SPEED);
    }
}
