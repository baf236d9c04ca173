package app.ramkeeper.rounds.travel;

import app.ramkeeper.fleet.Position;

/**
 * Invented roads of a hill country: one main road, valleys on both sides of it every ten kilometres, no way across the ridges,
 * a track from the valley's road to each site. Uphill is slower than down.
 */
public final class HillRoads implements Legs {

    public static final int VALLEYS = 8;
    private static final double APART = 10;
    private static final double SOUTH = -45;
    private static final double WEST = 168;
    private static final double KM_NORTH = 111.2;
    private static final double KM_EAST = 78.6;

    private static final double MAIN = 75;
    private static final double DOWN = 52;
    private static final double UP = 44;
    private static final double TRACK = 25;
    private static final double WINDING = 1.4;

    /** The place so many km along the main road and to its side. */
    public static Position at(double along, double aside) {
        return new Position(SOUTH + aside / KM_NORTH, WEST + along / KM_EAST);
    }

    /** Where a valley leaves the main road, km along it. */
    public static double mouth(int valley) {
        return APART / 2 + APART * valley;
    }

    @Override
    public Leg between(Position from, Position to) {
        Spot a = Spot.of(from);
        Spot b = Spot.of(to);
        if (a.valley != b.valley || a.side != b.side) {
            double main = Math.abs(mouth(a.valley) - mouth(b.valley));
            double minutes = 60 * (a.deep * WINDING / DOWN + main / MAIN + b.deep * WINDING / UP) + track(a) + track(b);
            return new Leg(minutes, 1000 * (WINDING * (a.deep + b.deep) + main + a.track + b.track));
        }
        double up = Math.max(0, b.deep - a.deep) * WINDING;
        double down = Math.max(0, a.deep - b.deep) * WINDING;
        double byRoad = 60 * (up / UP + down / DOWN) + track(a) + track(b);
        double straight = 1.8 * from.kilometresTo(to);
        double cross = 60 * straight / TRACK;
        return cross < byRoad
                ? new Leg(cross, 1000 * straight)
                : new Leg(byRoad, 1000 * (up + down + a.track + b.track));
    }

    private static double track(Spot spot) {
        return 60 * spot.track / TRACK;
    }

    private record Spot(int valley, int side, double deep, double track) {
        static Spot of(Position place) {
            double along = (place.longitude() - WEST) * KM_EAST;
            double aside = (place.latitude() - SOUTH) * KM_NORTH;
            int valley = (int) Math.max(0, Math.min(VALLEYS - 1, Math.floor(along / APART)));
            double off = Math.abs(along - mouth(valley));
            return new Spot(valley, Math.abs(aside) < 0.5 ? 0 : (int) Math.signum(aside), Math.abs(aside), 1.5 * off);
        }
    }
}
