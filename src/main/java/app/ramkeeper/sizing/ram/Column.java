package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.pipe.Friction;
import org.jspecify.annotations.Nullable;

/**
 * The water in the drive pipe as one stiff column, with the two valves at its end: rates of change for {@link Stepper}.
 *
 * <p>L dV/dt = g (H - p - losses), p the head at the pump. Through the waste valve p = k Vw|Vw|/2g with k from its lift,
 * through the delivery valve p = h + c Vd2/2g, and V = Vw + Vd.
 */
final class Column implements Stepper.Rates {

    static final int V = 0;
    static final int LIFT = 1;
    static final int SPEED = 2;
    static final int IN = 3;
    static final int WASTE = 4;
    static final int OUT = 5;
    static final int PIPE = 6;
    static final int WASTE_VALVE = 7;
    static final int DELIVERY_VALVE = 8;
    static final int SIZE = 9;

    private final double fall;
    private final double lift;
    private final double length;
    private final double bore;
    private final double relativeRoughness;
    private final double fittings;
    private final boolean rough;
    private final double nu;
    private final double g;
    private final double weight;
    private final double area;
    private final double snapLoss;
    private final WasteValve.@Nullable Weighted disc;
    private final double deliveryLoss;
    private final double suction;

    /** Whether the disc is free to move; held at its stop else. */
    boolean moving;

    /** Whether the waste valve is shut. */
    boolean shut;

    /** Whether the delivery valve may open. */
    boolean delivering;

    /** Head at the pump, set by {@link #split}. */
    double head;

    private double wasteV;
    private double outV;

    Column(CycleSetup setup) {
        fall = setup.fall().metres();
        lift = setup.lift().metres();
        length = setup.drive().length().metres();
        bore = setup.drive().bore().metres();
        relativeRoughness = setup.drive().roughness().metres() / bore;
        fittings = setup.drive().fittings();
        rough = setup.friction() == ColumnFriction.COLEBROOK_WHITE;
        nu = setup.ambient().water().kinematicViscosity();
        g = setup.ambient().gravity();
        weight = setup.ambient().specificWeight();
        area = setup.area();
        deliveryLoss = setup.deliveryValveLoss();
        disc = setup.waste() instanceof WasteValve.Weighted weighted ? weighted : null;
        snapLoss = setup.waste() instanceof WasteValve.Snap snap ? snap.lossCoefficient() : 0;
        suction = -setup.ambient()
                .headOf(setup.ambient()
                        .airPressure()
                        .minus(setup.ambient().water().vapourPressure()))
                .metres();
    }

    @Override
    public void at(double[] y, double[] rate) {
        double v = y[V];
        split(v, y[LIFT]);
        double loss = loss(v);
        rate[V] = g * (fall - head - loss) / length;
        if (moving && disc != null) {
            rate[LIFT] = y[SPEED];
            rate[SPEED] = (disc.closingForce() - weight * disc.seatArea() * head) / disc.mass();
        } else {
            rate[LIFT] = 0;
            rate[SPEED] = 0;
        }
        rate[IN] = area * v;
        rate[WASTE] = area * wasteV;
        rate[OUT] = area * outV;
        rate[PIPE] = weight * area * loss * v;
        rate[WASTE_VALVE] = weight * area * head * wasteV;
        rate[DELIVERY_VALVE] = weight * area * (head - lift) * outV;
    }

    /** Head lost along the drive pipe at a velocity, with its sign. */
    double loss(double v) {
        return wallLoss(v) * length + fittingLoss(v);
    }

    /** Head lost to the wall per metre of drive pipe, with its sign. */
    double wallLoss(double v) {
        double speed = Math.abs(v);
        if (!rough || speed < 1e-12) {
            return 0;
        }
        return Friction.factor(speed * bore / nu, relativeRoughness) / bore * v * speed / (2 * g);
    }

    /** Head lost in the drive pipe's fittings, with its sign. */
    double fittingLoss(double v) {
        return fittings * v * Math.abs(v) / (2 * g);
    }

    /** Lowest head the pump can see: the vapour pressure, below zero. */
    double suction() {
        return suction;
    }

    /** Net head that drives the column with the waste valve fully open. */
    double netHead(double v, double discLift) {
        shut = false;
        delivering = false;
        split(v, discLift);
        return fall - head - loss(v);
    }

    /** Loss coefficient of the waste valve at a lift of its disc, by the drive pipe's velocity head. */
    double wasteLoss(double discLift) {
        if (disc == null) {
            return snapLoss;
        }
        double ratio = area / (disc.discharge() * disc.gapArea(Math.max(discLift, 1e-9)));
        return ratio * ratio;
    }

    /** How the flow divides between the valves and what head that makes. */
    void split(double v, double discLift) {
        if (shut) {
            wasteV = 0;
            outV = v;
            head = lift + deliveryLoss * v * Math.abs(v) / (2 * g);
            return;
        }
        double k = wasteLoss(discLift);
        double open = k * v * Math.abs(v) / (2 * g);
        wasteV = v;
        outV = 0;
        head = Math.max(open, suction);
        if (delivering && head > lift) {
            share(v, k);
        }
    }

    /** Both valves open: sqrt(a (h + s2)) + sqrt(b) s = V, a quadratic in s, the root of the head above the lift. */
    private void share(double v, double k) {
        double a = 2 * g / k;
        if (deliveryLoss == 0) {
            head = lift;
        } else {
            double b = 2 * g / deliveryLoss;
            double over = v * v - a * lift;
            double s = over / (v * Math.sqrt(b) + Math.sqrt(a * over + a * b * lift));
            head = lift + s * s;
        }
        wasteV = Math.sqrt(a * head);
        outV = v - wasteV;
    }
}
