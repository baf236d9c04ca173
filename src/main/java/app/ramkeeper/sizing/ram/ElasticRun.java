package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.quantity.Head;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** One elastic run: the drive pipe on a grid, time in steps of a reach by the wave speed. */
final class ElasticRun {

    private static final int WARM_UP = 10;
    private static final int MEASURED = 4;
    private static final double LONGEST = 60;

    private final CycleSetup setup;
    private final Column column;
    private final int reaches;
    private final double fall;
    private final double lift;
    private final double step;
    private final double impedance;
    private final double area;
    private final double weight;
    private final double g;
    private final double deliveryLoss;
    private final double suction;
    private final WasteValve.@Nullable Weighted disc;
    private final double snapVelocity;
    private final double stroke;

    private double[] v;
    private double[] head;
    private double[] nextV;
    private double[] nextHead;
    private boolean open = true;
    private double discLift;
    private double discSpeed;
    private double wasteV;
    private double outV;
    private final double[] sums = new double[Column.SIZE];
    private double peak;
    private double closing;
    private double recoil;
    private double openTime;

    ElasticRun(CycleSetup setup, int reaches) {
        this.setup = setup;
        this.column = new Column(setup);
        this.reaches = reaches;
        this.fall = setup.fall().metres();
        this.lift = setup.lift().metres();
        this.g = setup.ambient().gravity();
        this.step = setup.drive().length().metres() / reaches / setup.waveSpeed();
        this.impedance = setup.waveSpeed() / g;
        this.area = setup.area();
        this.weight = setup.ambient().specificWeight();
        this.deliveryLoss = setup.deliveryValveLoss();
        this.suction = column.suction();
        this.disc = setup.waste() instanceof WasteValve.Weighted weighted ? weighted : null;
        this.snapVelocity = setup.waste() instanceof WasteValve.Snap snap ? snap.closingVelocity() : 0;
        this.stroke = disc == null ? 1 : disc.stroke().metres();
        this.discLift = stroke;
        this.v = new double[reaches + 1];
        this.head = new double[reaches + 1];
        this.nextV = new double[reaches + 1];
        this.nextHead = new double[reaches + 1];
        Arrays.fill(head, fall);
        head[reaches] = 0;
    }

    Cycle settle() {
        double longest = LONGEST * Math.max(0.05, setup.drive().length().metres() / (g * fall));
        int beats = 0;
        double time = 0;
        double started = 0;
        double lastBeat = 0;
        while (beats < WARM_UP + MEASURED) {
            boolean wasOpen = open;
            advance();
            time += step;
            if (wasOpen && !open) {
                beats++;
                lastBeat = time;
                if (beats == WARM_UP) {
                    started = time;
                    Arrays.fill(sums, 0);
                    peak = 0;
                    openTime = 0;
                    recoil = 0;
                }
                closing = v[0];
            } else {
                recoil = Math.max(recoil, -v[0]);
            }
            if (time - lastBeat > longest) {
                return Cycles.staysOpen(setup, v[0], new Head(head[reaches]), Cycles.notes(setup));
            }
        }
        return result(time - started);
    }

    private Cycle result(double seconds) {
        double[] mean = new double[Column.SIZE];
        for (int i = 0; i < mean.length; i++) {
            mean[i] = sums[i] / MEASURED;
        }
        double period = seconds / MEASURED;
        double opened = openTime / MEASURED;
        return Cycles.of(setup, mean, opened, period - opened, closing, recoil, peak, Cycles.notes(setup));
    }

    private void advance() {
        double pipeLoss = 0;
        double dx = setup.drive().length().metres() / reaches;
        for (int i = 1; i < reaches; i++) {
            double up = head[i - 1] + impedance * v[i - 1] - wall(v[i - 1], dx);
            double down = head[i + 1] - impedance * v[i + 1] + wall(v[i + 1], dx);
            nextHead[i] = (up + down) / 2;
            nextV[i] = (up - down) / (2 * impedance);
            pipeLoss += wall(v[i], dx) * v[i];
        }
        double entrance = column.fittingLoss(v[0]);
        nextHead[0] = fall - entrance;
        double down = head[1] - impedance * v[1] + wall(v[1], dx);
        nextV[0] = (nextHead[0] - down) / impedance;
        pump(head[reaches - 1] + impedance * v[reaches - 1] - wall(v[reaches - 1], dx));
        pipeLoss += (wall(v[0], dx) * v[0] + wall(v[reaches], dx) * v[reaches]) / 2 + entrance * v[0];
        sums[Column.PIPE] += weight * area * pipeLoss * step;
        swap();
        tally();
    }

    private void swap() {
        double[] oldV = v;
        v = nextV;
        nextV = oldV;
        double[] oldHead = head;
        head = nextHead;
        nextHead = oldHead;
    }

    private void tally() {
        double p = head[reaches];
        peak = Math.max(peak, p);
        sums[Column.IN] += area * v[0] * step;
        sums[Column.WASTE] += area * wasteV * step;
        sums[Column.OUT] += area * outV * step;
        sums[Column.WASTE_VALVE] += weight * area * p * wasteV * step;
        sums[Column.DELIVERY_VALVE] += weight * area * (p - lift) * outV * step;
        openTime += open ? step : 0;
    }

    /** Head lost to the wall in one reach. */
    private double wall(double velocity, double dx) {
        return column.wallLoss(velocity) * dx;
    }

    /** Head and flows at the pump from the wave that arrives there. */
    private void pump(double arriving) {
        wasteV = 0;
        outV = 0;
        double p = arriving;
        if (open) {
            double k = column.wasteLoss(discLift);
            double root = rootOf(Math.abs(arriving), k);
            wasteV = Math.copySign(Math.sqrt(2 * g / k) * root, arriving);
            p = Math.copySign(root * root, arriving);
            if (p > lift) {
                p = both(arriving, k, p);
                wasteV = Math.sqrt(2 * g * p / k);
                outV = Math.max(0, (arriving - p) / impedance - wasteV);
            }
        } else if (arriving > lift) {
            double root = deliveryLoss == 0 ? 0 : rootOf(arriving - lift, deliveryLoss);
            p = lift + root * root;
            outV = (arriving - p) / impedance;
        }
        if (p < suction) {
            p = suction;
            wasteV = open ? (arriving - p) / impedance : 0;
        }
        nextHead[reaches] = p;
        nextV[reaches] = (arriving - p) / impedance;
        moveValve(p, nextV[reaches]);
    }

    /** Root s of s2 + a/g sqrt(2g/k) s = available, the head at the pump being s2. */
    private double rootOf(double available, double k) {
        double b = impedance * Math.sqrt(2 * g / k);
        return 2 * available / (b + Math.sqrt(b * b + 4 * available));
    }

    private double both(double arriving, double k, double most) {
        if (deliveryLoss == 0) {
            return lift;
        }
        return Falling.zero(
                "head at the pump",
                p -> arriving
                        - p
                        - impedance
                                * (Math.sqrt(2 * g * p / k) + Math.sqrt(2 * g * Math.max(0, p - lift) / deliveryLoss)),
                lift,
                most,
                1e-9 * lift);
    }

    private void moveValve(double p, double velocity) {
        if (disc == null) {
            open = open ? velocity < snapVelocity : p < 0;
            return;
        }
        discSpeed += step * (disc.closingForce() - weight * disc.seatArea() * p) / disc.mass();
        discLift += step * discSpeed;
        if (discLift >= stroke) {
            discLift = stroke;
            discSpeed = Math.min(0, discSpeed);
        }
        if (discLift <= 0) {
            discLift = 0;
            discSpeed = Math.max(0, discSpeed);
        }
        open = discLift > 0;
    }
}
