package app.ramkeeper.sizing.line;

import app.ramkeeper.sizing.quantity.Check;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Note;
import java.util.List;
import java.util.stream.Stream;

/**
 * A delivery line under load.
 *
 * @param lift static delivery head, to the highest point
 * @param headAtPump head the pump delivers against, friction included
 * @param points heads at every point, stretch end and outlet, from the pump
 * @param stretches each with its pressure and class
 * @param outlets each with the head left
 * @param airValves where to put air valves
 * @param drains where to put drains
 * @param checks of the line as a whole
 * @param notes siphons, negative pressure, air valves that would draw air, water properties
 */
public record LineResult(
        Head lift,
        Head headAtPump,
        List<LinePoint> points,
        List<StretchResult> stretches,
        List<OutletResult> outlets,
        List<GroundPoint> airValves,
        List<GroundPoint> drains,
        List<Check> checks,
        List<Note> notes) {

    /** Keeps its own copies. */
    public LineResult {
        points = List.copyOf(points);
        stretches = List.copyOf(stretches);
        outlets = List.copyOf(outlets);
        airValves = List.copyOf(airValves);
        drains = List.copyOf(drains);
        checks = List.copyOf(checks);
        notes = List.copyOf(notes);
    }

    /**
     * Head lost to friction and fittings between pump and the point that sets the grade, with the residual wanted there,
     * m. Worked value: 3 for a lift of 60 m and 63 m at the pump.
     */
    public double frictionM() {
        return headAtPump.metres() - lift.metres();
    }

    /** The checks of the line and of its stretches together. */
    public List<Check> allChecks() {
        return Stream.concat(checks.stream(), stretches.stream().map(StretchResult::rating))
                .toList();
    }
}
