package app.ramkeeper.quotes.survey;

import app.ramkeeper.sizing.line.GroundPoint;
import java.util.ArrayList;
import java.util.List;

/**
 * Leaves out points of a profile that lie nearly on the line between their neighbours.
 *
 * <p>Douglas, D. H. and Peucker, T. K. 1973, Algorithms for the reduction of the number of points, The Canadian
 * Cartographer 10; with vertical distance, for levels are what counts. The highest point always stays.
 */
public final class Thinning {

    private Thinning() {}

    /** At most so many points, 3 or more. */
    public static List<GroundPoint> to(List<GroundPoint> points, int most) {
        List<GroundPoint> thin = points;
        for (double tolerance = 0.05; thin.size() > most; tolerance *= 1.5) {
            thin = within(points, tolerance);
        }
        return thin;
    }

    private static List<GroundPoint> within(List<GroundPoint> points, double tolerance) {
        boolean[] stays = new boolean[points.size()];
        int highest = 0;
        for (int i = 0; i < points.size(); i++) {
            highest = points.get(i).levelM() > points.get(highest).levelM() ? i : highest;
        }
        stays[0] = stays[highest] = stays[points.size() - 1] = true;
        mark(points, 0, highest, tolerance, stays);
        mark(points, highest, points.size() - 1, tolerance, stays);
        List<GroundPoint> thin = new ArrayList<>();
        for (int i = 0; i < stays.length; i++) {
            if (stays[i]) {
                thin.add(points.get(i));
            }
        }
        return thin;
    }

    private static void mark(List<GroundPoint> points, int from, int to, double tolerance, boolean[] stays) {
        if (to - from < 2) {
            return;
        }
        GroundPoint a = points.get(from);
        GroundPoint b = points.get(to);
        int furthest = from;
        double most = tolerance;
        for (int i = from + 1; i < to; i++) {
            double share = (points.get(i).chainageM() - a.chainageM()) / (b.chainageM() - a.chainageM());
            double off = Math.abs(points.get(i).levelM() - a.levelM() - share * (b.levelM() - a.levelM()));
            if (off > most) {
                most = off;
                furthest = i;
            }
        }
        if (furthest > from) {
            stays[furthest] = true;
            mark(points, from, furthest, tolerance, stays);
            mark(points, furthest, to, tolerance, stays);
        }
    }
}
