package app.ramkeeper.sizing.line;

import app.ramkeeper.sizing.pipe.Derating;
import app.ramkeeper.sizing.pipe.PipeCatalogue;
import app.ramkeeper.sizing.pipe.PipeRun;
import app.ramkeeper.sizing.pipe.PipeType;
import app.ramkeeper.sizing.quantity.Check;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Noted;
import app.ramkeeper.sizing.quantity.Numbers;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.water.Ambient;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Works out the result of one line under one load. */
final class LineReport {

    /** Mean velocity that a delivery line should not pass, m/s; common practice, no source. */
    private static final double VELOCITY_LIMIT = 2.0;

    private final DeliveryLine line;
    private final LineNodes nodes;
    private final LineLoad load;
    private final Ambient ambient;
    private final double flow;
    private final double nu;
    private final double[] grade;
    private final List<LinePoint> points;

    LineReport(DeliveryLine line, LineNodes nodes, LineLoad load) {
        this.line = line;
        this.nodes = nodes;
        this.load = load;
        this.ambient = load.ambient();
        this.flow = load.delivered().cubicMetresPerSecond();
        this.nu = ambient.water().kinematicViscosity();
        this.grade = nodes.grades(flow, nu, ambient.gravity(), true);
        this.points = points();
    }

    LineResult result() {
        List<StretchResult> stretches = stretches();
        return new LineResult(
                line.lift(),
                new Head(grade[0] - line.ground().pumpLevelM()),
                points,
                stretches,
                outlets(),
                line.ground().highPoints(),
                line.ground().lowPoints(),
                List.of(velocity(stretches)),
                notes());
    }

    private List<LinePoint> points() {
        double[] full = nodes.grades(flow, nu, ambient.gravity(), false);
        double highest = line.highestLevelM();
        double pump = line.ground().pumpLevelM();
        Optional<Double> shut =
                load.shut().map(pressure -> ambient.headOf(pressure).metres() + pump);
        List<LinePoint> found = new ArrayList<>();
        for (int i = 0; i < grade.length; i++) {
            double level = nodes.level[i];
            found.add(new LinePoint(
                    nodes.chainage[i],
                    level,
                    grade[i],
                    grade[i] - level,
                    full[i] - level,
                    highest - level,
                    shut.isPresent() ? shut.get() - level : Double.NaN));
        }
        return found;
    }

    private List<StretchResult> stretches() {
        List<StretchResult> results = new ArrayList<>();
        int first = 0;
        double from = 0;
        for (Stretch stretch : line.stretches()) {
            int last = first;
            while (nodes.chainage[last] < stretch.toM()) {
                last++;
            }
            results.add(stretch(stretch, from, first, last));
            first = last;
            from = stretch.toM();
        }
        return results;
    }

    private StretchResult stretch(Stretch stretch, double from, int first, int last) {
        double most = 0;
        for (int i = first; i <= last; i++) {
            most = Math.max(most, points.get(i).greatestHeadM());
        }
        Pressure greatest = ambient.pressureOf(new Head(most));
        PipeType type = stretch.type();
        Noted<Pressure> allowed = Derating.of(type.material()).allowed(type, load.pipeWall());
        Check rating = Check.atMost(
                Numbers.sentence("Pressure in %s from %.0f to %.0f m", type.words(), from, stretch.toM()),
                greatest.bar(),
                allowed.value().bar(),
                "bar");
        if (allowed.value().compareTo(type.rating()) < 0) {
            rating = rating.because(Numbers.sentence(
                    "Its %.1f bar are derated for a wall of %.0f degC by %s.",
                    type.rating().bar(),
                    load.pipeWall().celsius(),
                    Derating.of(type.material()).source()));
        }
        Set<Note> notes = new LinkedHashSet<>(allowed.notes());
        double loss = 0;
        for (int i = first; i < last; i++) {
            Noted<Head> reach = reach(i);
            loss += reach.value().metres();
            notes.addAll(reach.notes());
        }
        double velocity =
                nodes.flowIn(first, flow) / (Math.PI / 4 * Math.pow(type.bore().metres(), 2));
        return new StretchResult(
                stretch, from, velocity, loss, greatest, rating, leastClass(type, greatest), List.copyOf(notes));
    }

    private Noted<Head> reach(int i) {
        Stretch stretch = nodes.stretch[i];
        PipeRun run = new PipeRun(
                stretch.type().bore(), new Length(nodes.lengthOf(i)), stretch.roughness(), nodes.fittingsOf(i));
        return run.headLoss(new Flow(nodes.flowIn(i, flow)), ambient);
    }

    private Optional<PipeType> leastClass(PipeType type, Pressure greatest) {
        return PipeCatalogue.leastClass(PipeCatalogue.of(type.material()), type.nominal(), greatest, load.pipeWall())
                .map(Noted::value);
    }

    private List<OutletResult> outlets() {
        List<OutletResult> results = new ArrayList<>();
        for (Outlet outlet : line.outlets()) {
            int node = 0;
            while (nodes.chainage[node] < outlet.chainageM()) {
                node++;
            }
            double branch = LineNodes.branchLoss(outlet, flow, nu, ambient.gravity());
            results.add(new OutletResult(
                    outlet, new Flow(flow * outlet.share()), grade[node] - branch - outlet.waterLevelM()));
        }
        return results;
    }

    private static Check velocity(List<StretchResult> stretches) {
        double most =
                stretches.stream().mapToDouble(StretchResult::velocityMs).max().orElseThrow();
        return Check.atMost("Velocity in the delivery line", most, VELOCITY_LIMIT, "m/s")
                .because("Common practice.");
    }

    private List<Note> notes() {
        List<Note> notes = new ArrayList<>(ambient.notes());
        new SiphonAdvice(points, line.ground().highPoints(), ambient).addTo(notes);
        return notes;
    }
}
