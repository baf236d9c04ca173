package app.ramkeeper.quotes.design;

import app.ramkeeper.sizing.line.GroundPoint;
import app.ramkeeper.sizing.line.GroundProfile;

/** Lengths of pipe along the ground. */
final class Slope {

    private Slope() {}

    /** Length along the slope between two chainages, m. */
    static double length(GroundProfile ground, double fromM, double toM) {
        double length = 0;
        double chainage = fromM;
        double level = ground.levelAt(fromM);
        for (GroundPoint point : ground.points()) {
            if (point.chainageM() > fromM && point.chainageM() < toM) {
                length += Math.hypot(point.chainageM() - chainage, point.levelM() - level);
                chainage = point.chainageM();
                level = point.levelM();
            }
        }
        return length + Math.hypot(toM - chainage, ground.levelAt(toM) - level);
    }
}
