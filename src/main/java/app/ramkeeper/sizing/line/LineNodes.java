package app.ramkeeper.sizing.line;

import app.ramkeeper.sizing.pipe.Friction;
import app.ramkeeper.sizing.pipe.PipeRun;
import java.util.List;
import java.util.TreeSet;

/** The line cut at every point, stretch end and outlet, as plain arrays for quick marching. */
final class LineNodes {

    final double[] chainage;
    final double[] level;
    final Stretch[] stretch;
    private final double[] length;
    private final double[] bore;
    private final double[] roughness;
    private final double[] fittings;
    private final double[] share;
    private final Outlet[][] outlets;

    LineNodes(GroundProfile ground, List<Stretch> stretches, List<Outlet> all) {
        TreeSet<Double> cuts = new TreeSet<>();
        ground.points().forEach(point -> cuts.add(point.chainageM()));
        stretches.forEach(part -> cuts.add(part.toM()));
        all.forEach(outlet -> cuts.add(outlet.chainageM()));
        chainage = cuts.stream().mapToDouble(Double::doubleValue).toArray();
        int nodes = chainage.length;
        level = new double[nodes];
        outlets = new Outlet[nodes][];
        for (int i = 0; i < nodes; i++) {
            double at = chainage[i];
            level[i] = ground.levelAt(at);
            outlets[i] = all.stream().filter(outlet -> outlet.chainageM() == at).toArray(Outlet[]::new);
        }
        stretch = new Stretch[nodes - 1];
        length = new double[nodes - 1];
        bore = new double[nodes - 1];
        roughness = new double[nodes - 1];
        fittings = new double[nodes - 1];
        share = new double[nodes - 1];
        fillReaches(stretches, all);
    }

    private void fillReaches(List<Stretch> stretches, List<Outlet> all) {
        int part = 0;
        double partStart = 0;
        for (int i = 0; i < stretch.length; i++) {
            if (chainage[i] >= stretches.get(part).toM()) {
                partStart = stretches.get(part).toM();
                part++;
            }
            Stretch current = stretches.get(part);
            double plan = chainage[i + 1] - chainage[i];
            double end = chainage[i + 1];
            stretch[i] = current;
            length[i] = Math.hypot(plan, level[i + 1] - level[i]);
            bore[i] = current.type().bore().metres();
            roughness[i] = current.roughness().metres();
            fittings[i] = current.fittings() * plan / (current.toM() - partStart);
            share[i] = all.stream()
                    .filter(outlet -> outlet.chainageM() >= end)
                    .mapToDouble(Outlet::share)
                    .sum();
        }
    }

    double flowIn(int reach, double delivered) {
        return delivered * share[reach];
    }

    double lengthOf(int reach) {
        return length[reach];
    }

    double fittingsOf(int reach) {
        return fittings[reach];
    }

    /**
     * Grade at every node, marched from the far end to the pump and back.
     *
     * @param vented air gets in at high points, so the grade never falls below the pipe
     */
    double[] grades(double delivered, double nu, double g, boolean vented) {
        double[] grade = new double[chainage.length];
        int last = chainage.length - 1;
        grade[last] = at(last, Double.NEGATIVE_INFINITY, delivered, nu, g, vented);
        for (int i = last - 1; i >= 0; i--) {
            double above = grade[i + 1] + loss(i, delivered, nu, g);
            grade[i] = at(i, above, delivered, nu, g, vented);
        }
        carryOn(grade, delivered, nu, g, vented);
        return grade;
    }

    /** Where an outlet holds the grade up, the pipe beyond it stands under what is left, down to an open high point. */
    private void carryOn(double[] grade, double delivered, double nu, double g, boolean vented) {
        for (int i = 0; i < stretch.length; i++) {
            if (!vented || grade[i] > level[i]) {
                grade[i + 1] = Math.max(grade[i + 1], grade[i] - loss(i, delivered, nu, g));
            }
        }
    }

    /** Grade at the pump alone, without making anything. */
    double gradeAtPump(double delivered, double nu, double g) {
        int last = chainage.length - 1;
        double grade = at(last, Double.NEGATIVE_INFINITY, delivered, nu, g, true);
        for (int i = last - 1; i >= 0; i--) {
            grade = at(i, grade + loss(i, delivered, nu, g), delivered, nu, g, true);
        }
        return grade;
    }

    private double loss(int reach, double delivered, double nu, double g) {
        return Friction.headLoss(
                delivered * share[reach], bore[reach], length[reach], roughness[reach], fittings[reach], nu, g);
    }

    private double at(int node, double above, double delivered, double nu, double g, boolean vented) {
        double grade = vented ? Math.max(above, level[node]) : above;
        for (Outlet outlet : outlets[node]) {
            grade = Math.max(grade, needed(outlet, delivered, nu, g));
        }
        return grade;
    }

    private static double needed(Outlet outlet, double delivered, double nu, double g) {
        return outlet.waterLevelM() + outlet.residualM() + branchLoss(outlet, delivered, nu, g);
    }

    static double branchLoss(Outlet outlet, double delivered, double nu, double g) {
        if (outlet.branch().isEmpty()) {
            return 0;
        }
        PipeRun branch = outlet.branch().get();
        return Friction.headLoss(
                delivered * outlet.share(),
                branch.bore().metres(),
                branch.length().metres(),
                branch.roughness().metres(),
                branch.fittings(),
                nu,
                g);
    }
}
