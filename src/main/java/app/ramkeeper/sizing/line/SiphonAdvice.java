package app.ramkeeper.sizing.line;

import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Numbers;
import app.ramkeeper.sizing.water.Ambient;
import java.util.Comparator;
import java.util.List;

/** Warnings about suction: lines that would run as siphons, columns that would part, air valves that would draw air. */
final class SiphonAdvice {

    /** Below this running head an air valve may let air in, m; common practice, no source. */
    private static final double QUIET_AIR_VALVE_M = 2;

    /** A siphon deeper than this does not stay primed, m; common practice at sea level, no source. */
    private static final double DEEPEST_SIPHON_M = 7;

    private final List<LinePoint> points;
    private final List<GroundPoint> highPoints;
    private final Ambient ambient;

    SiphonAdvice(List<LinePoint> points, List<GroundPoint> highPoints, Ambient ambient) {
        this.points = points;
        this.highPoints = highPoints;
        this.ambient = ambient;
    }

    void addTo(List<Note> notes) {
        points.stream()
                .min(Comparator.comparingDouble(LinePoint::fullPipeHeadM))
                .filter(point -> point.fullPipeHeadM() < -1e-9)
                .ifPresent(point -> notes.add(siphon(point)));
        for (GroundPoint high : highPoints) {
            points.stream()
                    .filter(point -> point.chainageM() == high.chainageM())
                    .filter(point -> point.runningHeadM() < QUIET_AIR_VALVE_M)
                    .findFirst()
                    .ifPresent(point -> notes.add(quietValve(point)));
        }
    }

    private Note siphon(LinePoint point) {
        double suction = -point.fullPipeHeadM();
        double parts = ambient.headOf(
                        ambient.airPressure().minus(ambient.water().vapourPressure()))
                .metres();
        String where = Numbers.sentence(
                "At %.0f m along, level %.1f m, the line would be under %.1f m of suction if it ran full",
                point.chainageM(), point.levelM(), suction);
        if (suction >= parts) {
            return new Note(
                    Note.Code.CAUTION,
                    where
                            + Numbers.sentence(
                                    ", more than the %.1f m that water bears here: the column parts. The lift counts to that point; let air in there.",
                                    parts));
        }
        String depth = suction > Math.min(DEEPEST_SIPHON_M, parts)
                ? " It will not stay primed."
                : " It may run as a siphon only while it is tight and primed, and it draws in dirt at any leak.";
        return new Note(
                Note.Code.CAUTION, where + "." + depth + " The lift is counted to that point, with air let in there.");
    }

    private static Note quietValve(LinePoint point) {
        return new Note(
                Note.Code.CAUTION,
                Numbers.sentence(
                        "The high point at %.0f m has only %.1f m of head while running: an air valve there lets air in as well as out; keep its vent above flood and dirt.",
                        point.chainageM(), point.runningHeadM()));
    }
}
