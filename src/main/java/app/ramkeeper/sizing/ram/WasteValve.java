package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Require;

/** The valve that shuts with each beat; its setting is what the technician turns. */
public sealed interface WasteValve permits WasteValve.Snap, WasteValve.Weighted {

    /** The setting: closing velocity in m/s of a {@link Snap}, stroke in m of a {@link Weighted} valve. */
    double setting();

    /** The same valve at another setting, more than 0. */
    WasteValve withSetting(double value);

    /**
     * A valve that shuts in no time when the water in the drive pipe reaches a velocity, and falls open in no time.
     *
     * <p>The valve of rigid-column theory (Krol 1951, Iversen 1975, Tacke 1988; from memory). Use it when nothing is
     * known of the valve but the flow it lets by.
     *
     * @param closingVelocity velocity in the drive pipe at which it shuts, m/s, more than 0; usual 1 to 2.5
     * @param lossCoefficient head lost through the open valve and at its exit, in velocity heads of the drive pipe
     */
    record Snap(double closingVelocity, double lossCoefficient) implements WasteValve {

        /** Refuses a closing velocity of nothing and a loss below nothing. */
        public Snap {
            Require.positive("closing velocity", closingVelocity, "m/s");
            Require.notNegative("loss coefficient of the waste valve", lossCoefficient, "");
        }

        @Override
        public double setting() {
            return closingVelocity;
        }

        @Override
        public WasteValve withSetting(double value) {
            return new Snap(value, lossCoefficient);
        }
    }

    /**
     * A disc under its weight or a spring: shuts when the water's pressure on the disc overcomes the force.
     *
     * <p>Water leaves through the gap round the disc, of area bore x pi x lift of the disc (never more than the seat);
     * head lost is that of an orifice, V2/2g at the gap by the square of the discharge coefficient. The pressure under
     * the disc times the seat's area works against the closing force. The disc's motion is integrated, so when it shuts,
     * and how fast, comes out. Worked value: with a seat of 60 mm and 30 N the disc starts at 1.08 m of head.
     *
     * @param seat bore of the seat, more than 0
     * @param stroke how far the disc falls when open, more than 0
     * @param closingForce submerged weight and spring, N, more than 0; the spring's own rate is neglected
     * @param mass what moves, with the water that goes along, kg, more than 0
     * @param discharge discharge coefficient of the gap, 0.3 to 1; 0.6 to 0.7 usual
     */
    record Weighted(Length seat, Length stroke, double closingForce, double mass, double discharge)
            implements WasteValve {

        /** Refuses a valve without size, force or mass, and a discharge coefficient outside 0.3 to 1. */
        public Weighted {
            Require.positive("bore of the seat", seat.metres(), "m");
            Require.positive("stroke", stroke.metres(), "m");
            Require.positive("closing force", closingForce, "N");
            Require.positive("moving mass", mass, "kg");
            Require.within("discharge coefficient", discharge, 0.3, 1, "");
        }

        /** Area of the seat, m2. */
        public double seatArea() {
            return Math.PI / 4 * seat.metres() * seat.metres();
        }

        /** Area of the gap at a lift of the disc, m2: a cylinder's side, never more than the seat. */
        public double gapArea(double liftM) {
            return Math.min(Math.PI * seat.metres() * Math.max(liftM, 0), seatArea());
        }

        @Override
        public double setting() {
            return stroke.metres();
        }

        @Override
        public WasteValve withSetting(double value) {
            return new Weighted(seat, new Length(value), closingForce, mass, discharge);
        }
    }
}
