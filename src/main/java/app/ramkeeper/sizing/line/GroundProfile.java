package app.ramkeeper.sizing.line;

import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Require;
import java.util.ArrayList;
import java.util.List;

/**
 * Levels along a route, straight between its points; it starts at the pump.
 *
 * @param points two or more, the first at chainage 0, chainage rising
 */
public record GroundProfile(List<GroundPoint> points) {

    /** Refuses fewer than two points, a start other than chainage 0, and chainage that does not rise. */
    public GroundProfile {
        points = List.copyOf(points);
        if (points.size() < 2) {
            throw new ImpossibleInput("ground profile", points.size() + " points", "two or more");
        }
        if (points.get(0).chainageM() != 0) {
            throw new ImpossibleInput("first chainage", points.get(0).chainageM(), "0, at the pump");
        }
        for (int i = 1; i < points.size(); i++) {
            if (!(points.get(i).chainageM() > points.get(i - 1).chainageM())) {
                throw new ImpossibleInput(
                        "chainage",
                        points.get(i).chainageM() + " m",
                        "more than the one before, " + points.get(i - 1).chainageM() + " m");
            }
        }
    }

    /** A profile from chainage, level, chainage, level and so on. */
    public static GroundProfile of(double... chainagesAndLevels) {
        if (chainagesAndLevels.length % 2 != 0) {
            throw new ImpossibleInput("ground profile", chainagesAndLevels.length + " numbers", "pairs");
        }
        List<GroundPoint> points = new ArrayList<>();
        for (int i = 0; i < chainagesAndLevels.length; i += 2) {
            points.add(new GroundPoint(chainagesAndLevels[i], chainagesAndLevels[i + 1]));
        }
        return new GroundProfile(points);
    }

    /** Level of the pump. */
    public double pumpLevelM() {
        return points.get(0).levelM();
    }

    /** Chainage of the far end. */
    public double endM() {
        return points.get(points.size() - 1).chainageM();
    }

    /** Level at a chainage. Worked value: 15 m halfway between 10 and 20 m. */
    public double levelAt(double chainageM) {
        Require.within("chainage", chainageM, 0, endM(), "m");
        int i = 1;
        while (points.get(i).chainageM() < chainageM) {
            i++;
        }
        GroundPoint before = points.get(i - 1);
        GroundPoint after = points.get(i);
        double share = (chainageM - before.chainageM()) / (after.chainageM() - before.chainageM());
        return before.levelM() + share * (after.levelM() - before.levelM());
    }

    /** Level of the highest point. */
    public double highestM() {
        return points.stream().mapToDouble(GroundPoint::levelM).max().orElseThrow();
    }

    /**
     * Places for air valves: points higher than the ground on both sides (of a flat top, its first point).
     *
     * <p>Worked value: 0, 10, 5, 20 m has one, the point at 10 m.
     */
    public List<GroundPoint> highPoints() {
        return turns(1);
    }

    /** Places for drains: the pump if the line leaves it upwards, and points lower than the ground on both sides. */
    public List<GroundPoint> lowPoints() {
        List<GroundPoint> low = new ArrayList<>(turns(-1));
        points.stream()
                .filter(point -> point.levelM() != pumpLevelM())
                .findFirst()
                .filter(first -> first.levelM() > pumpLevelM())
                .ifPresent(first -> low.add(0, points.get(0)));
        return low;
    }

    private List<GroundPoint> turns(int sign) {
        List<GroundPoint> turns = new ArrayList<>();
        GroundPoint candidate = null;
        for (int i = 1; i < points.size(); i++) {
            double rise = sign * (points.get(i).levelM() - points.get(i - 1).levelM());
            if (rise > 0) {
                candidate = points.get(i);
            } else if (rise < 0 && candidate != null) {
                turns.add(candidate);
                candidate = null;
            }
        }
        return turns;
    }
}
