package app.ramkeeper.sizing.water;

import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Require;
import java.util.List;

/**
 * What every calculation at a site shares: the water, gravity and the air pressure.
 *
 * @param water the water with its temperature
 * @param gravity acceleration in m/s2; 9.76 to 9.84 on land, any positive value is taken
 * @param airPressure absolute
 */
public record Ambient(Water water, double gravity, Pressure airPressure) {

    /** Standard acceleration of gravity, m/s2 (ISO 80000-3; exact by definition). */
    public static final double STANDARD_GRAVITY = 9.80665;

    /** Refuses gravity and air pressure of zero or less. */
    public Ambient {
        Require.positive("gravity", gravity, "m/s2");
        Require.positive("air pressure", airPressure.pascals(), "Pa");
    }

    /** Water at a temperature, standard gravity, standard air at an altitude of -500 to 9000 m. */
    public static Ambient of(double waterCelsius, double altitudeM) {
        return new Ambient(Water.atCelsius(waterCelsius), STANDARD_GRAVITY, Atmosphere.at(altitudeM));
    }

    /** Water of 10 degC at sea level with standard gravity. */
    public static Ambient standard() {
        return of(10, 0);
    }

    /** The same with another gravity, m/s2. */
    public Ambient withGravity(double value) {
        return new Ambient(water, value, airPressure);
    }

    /** Weight of the water, N/m3. Worked value: 9803.7 at 10 degC. */
    public double specificWeight() {
        return water.density() * gravity;
    }

    /** Pressure under a head of this water. Worked value: 50 m is 4.902 bar at 10 degC. */
    public Pressure pressureOf(Head head) {
        return head.pressure(water.density(), gravity);
    }

    /** Head of this water that a pressure holds up. Worked value: 5 bar is 51.0 m at 10 degC. */
    public Head headOf(Pressure pressure) {
        return new Head(pressure.pascals() / specificWeight());
    }

    /** Notes of the water. */
    public List<Note> notes() {
        return water.notes();
    }
}
