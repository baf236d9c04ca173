package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.pipe.PipeRun;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.water.Ambient;

/** Pumps to try things on. */
public final class Setups {

    public static final double G = Ambient.STANDARD_GRAVITY;

    private Setups() {}

    /** 12 m of 50 mm under 2 m of fall, losses of 12 velocity heads, all in the waste valve. */
    public static CycleSetup textbook(double closingVelocity, double liftM) {
        return new CycleSetup(
                new Head(2),
                new Head(liftM),
                new PipeRun(new Length(0.05), new Length(12), new Length(0), 0),
                ColumnFriction.NONE,
                1400,
                new WasteValve.Snap(closingVelocity, 12),
                0,
                Ambient.standard());
    }

    public static CycleClosedForms closedForms() {
        return new CycleClosedForms(new Length(12), new Length(0.05), new Head(2), 12, G);
    }

    /** A two-inch pump with a weighted disc: 4 m of fall, 30 m of lift, 24 m of steel. */
    public static CycleSetup hill() {
        return new CycleSetup(
                new Head(4),
                new Head(30),
                steel(),
                ColumnFriction.COLEBROOK_WHITE,
                1330,
                new WasteValve.Weighted(new Length(0.06), new Length(0.006), 30, 1.2, 0.65),
                2,
                Ambient.standard());
    }

    /** The same pump with a valve that snaps shut. */
    public static CycleSetup snap() {
        return new CycleSetup(
                new Head(4),
                new Head(30),
                steel(),
                ColumnFriction.COLEBROOK_WHITE,
                1330,
                new WasteValve.Snap(1.4, 2.5),
                2,
                Ambient.standard());
    }

    private static PipeRun steel() {
        return new PipeRun(new Length(0.053), new Length(24), new Length(0.00015), 0.8);
    }
}
