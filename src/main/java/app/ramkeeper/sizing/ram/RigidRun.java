package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Note;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One run of the rigid column through its phases. Not to be shared between threads. */
final class RigidRun {

    private static final double RELATIVE = 1e-8;
    private static final int MOST_BEATS = 20;
    private static final double LONGEST = 40;

    private final CycleSetup setup;
    private final Column column;
    private final Stepper stepper;
    private final double[] y = new double[Column.SIZE];
    private final WasteValve.@Nullable Weighted disc;
    private final double snapVelocity;
    private final double stroke;
    private final double springBack;
    private final double gatherTime;
    private Stepper.Watcher watcher = (time, state) -> {};
    private double peak;

    RigidRun(CycleSetup setup) {
        this.setup = setup;
        this.column = new Column(setup);
        this.disc = setup.waste() instanceof WasteValve.Weighted weighted ? weighted : null;
        this.snapVelocity = setup.waste() instanceof WasteValve.Snap snap ? snap.closingVelocity() : 0;
        this.stroke = disc == null ? 1 : disc.stroke().metres();
        double g = setup.ambient().gravity();
        double fall = setup.fall().metres();
        this.springBack = g * (setup.lift().metres() - fall) / setup.waveSpeed();
        this.gatherTime = setup.drive().length().metres() * closingVelocity() / (g * fall);
        this.stepper = new Stepper(RELATIVE, floors());
    }

    private double[] floors() {
        double volume = setup.area() * setup.drive().length().metres() * 1e-9;
        double energy = volume * setup.ambient().specificWeight() * setup.fall().metres();
        double[] floor = new double[Column.SIZE];
        Arrays.fill(floor, energy);
        floor[Column.V] = 1e-9;
        floor[Column.LIFT] = stroke * 1e-8;
        floor[Column.SPEED] = stroke * 1e-6;
        floor[Column.IN] = volume;
        floor[Column.WASTE] = volume;
        floor[Column.OUT] = volume;
        return floor;
    }

    /** Velocity at which the fully open valve begins to shut. */
    private double closingVelocity() {
        if (disc == null) {
            return snapVelocity;
        }
        double closingHead = disc.closingForce() / (setup.ambient().specificWeight() * disc.seatArea());
        return Math.sqrt(2 * setup.ambient().gravity() * closingHead / column.wasteLoss(stroke));
    }

    /** Repeats the beat until it starts as it ends (at once, but for a pump whose blow is too weak). */
    Cycle settle(Stepper.Watcher sees) {
        watcher = sees;
        if (!(column.netHead(closingVelocity(), stroke) > 1e-6 * setup.fall().metres())) {
            return staysOpen();
        }
        double start = springBack;
        Cycle cycle = beat(start);
        for (int i = 0; i < MOST_BEATS && Math.abs(cycle.recoilVelocity() - start) > 1e-9; i++) {
            start = cycle.recoilVelocity();
            cycle = beat(start);
        }
        return cycle;
    }

    private Cycle beat(double backwards) {
        Arrays.fill(y, 0);
        y[Column.V] = -backwards;
        stepper.restart();
        peak = 0;
        column.shut = false;
        column.delivering = false;
        see(0, y);
        if (!gather()) {
            return staysOpen();
        }
        double closing = y[Column.V];
        double openSeconds = stepper.time();
        double recoil = closing;
        if (closing > springBack) {
            recoil = springBack;
            y[Column.V] = Math.sqrt(closing * closing - springBack * springBack);
            deliver();
        }
        y[Column.V] = -recoil;
        return Cycles.of(setup, y, openSeconds, stepper.time() - openSeconds, closing, recoil, peak, notes());
    }

    /** Waste valve opens, the column gathers speed, the valve shuts so far that the head reaches the lift. */
    private boolean gather() {
        if (disc == null) {
            return run(state -> state[Column.V] - snapVelocity);
        }
        double lift = setup.lift().metres();
        column.moving = true;
        boolean stopped = run(state -> Math.max(state[Column.LIFT] - stroke, headOver(state, lift)));
        if (!stopped) {
            return false;
        }
        if (y[Column.LIFT] >= stroke * (1 - 1e-9)) {
            y[Column.LIFT] = stroke;
            y[Column.SPEED] = 0;
            column.moving = false;
            double closingHead = disc.closingForce() / (setup.ambient().specificWeight() * disc.seatArea());
            if (!run(state -> headOver(state, closingHead))) {
                return false;
            }
            column.moving = true;
            return run(state -> headOver(state, lift));
        }
        return true;
    }

    private double headOver(double[] state, double limit) {
        column.split(state[Column.V], state[Column.LIFT]);
        return (column.head - limit) / limit;
    }

    private void deliver() {
        column.delivering = true;
        if (disc != null) {
            run(state -> Math.max(-state[Column.LIFT] / stroke, -state[Column.V]));
        }
        y[Column.LIFT] = 0;
        y[Column.SPEED] = 0;
        column.moving = false;
        column.shut = true;
        run(state -> -state[Column.V]);
    }

    private boolean run(Stepper.Stop stop) {
        double horizon = LONGEST * Math.max(gatherTime, 0.05);
        return stepper.run(y, column, stop, 1e-3 * gatherTime, horizon, this::see);
    }

    private void see(double time, double[] state) {
        column.split(state[Column.V], state[Column.LIFT]);
        peak = Math.max(peak, column.head);
        watcher.step(time, state);
    }

    CyclePoint point(double time, double[] state) {
        column.split(state[Column.V], state[Column.LIFT]);
        double open = column.shut ? 0 : disc == null ? 1 : Math.max(0, state[Column.LIFT] / stroke);
        return new CyclePoint(time, state[Column.V], column.head, open);
    }

    private Cycle staysOpen() {
        double low = 0;
        double high = 50;
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (column.netHead(middle, stroke) > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return Cycles.staysOpen(setup, low, new Head(column.head), notes());
    }

    private List<Note> notes() {
        return Cycles.notes(setup);
    }
}
