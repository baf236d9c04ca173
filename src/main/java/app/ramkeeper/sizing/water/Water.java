package app.ramkeeper.sizing.water;

import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.quantity.Temperature;
import java.util.List;

/**
 * Fresh liquid water at one atmosphere and a temperature.
 *
 * <p>The formulas are meant for 0 to 40 degC; from there to -5 and 60 degC the notes say that it is outside, beyond it is
 * refused (ice, or nothing a ram pump meets). Worked value at 20 degC: 998.2 kg/m3, 1.0016 mPa s, 2339 Pa of vapour
 * pressure, 2.179 GPa isothermal, sound at 1482 m/s.
 */
public record Water(Temperature temperature) {

    /** Range of temperature without a note, degC. */
    public static final double LOW_C = 0;

    /** Range of temperature without a note, degC. */
    public static final double HIGH_C = 40;

    /** Refuses temperatures outside -5 to 60 degC. */
    public Water {
        Require.within("water temperature", temperature.celsius(), -5, 60, "degC");
    }

    /** Water at so many degrees Celsius. */
    public static Water atCelsius(double celsius) {
        return new Water(Temperature.ofCelsius(celsius));
    }

    /** A note if the temperature is outside 0 to 40 degC. */
    public List<Note> notes() {
        double t = temperature.celsius();
        return t >= LOW_C && t <= HIGH_C
                ? List.of()
                : List.of(Note.outside("the water property set", "water temperature", t, LOW_C, HIGH_C, "degC"));
    }

    /**
     * Density in kg/m3.
     *
     * <p>Source: Kell, G. S. 1975, Density, thermal expansivity, and compressibility of liquid water from 0 to 150 degC,
     * J. Chem. Eng. Data 20(1), 97-105, table 1; error below 0.01 kg/m3. Worked value: 999.70 at 10 degC.
     */
    public double density() {
        double t = temperature.celsius();
        double top = 999.83952
                + t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))));
        return top / (1 + 16.879850e-3 * t);
    }

    /**
     * Dynamic viscosity in Pa s.
     *
     * <p>Source: IAPWS SR6-08 (2011), Revised supplementary release on properties of liquid water at 0.1 MPa, equation
     * 7; 253-383 K, error below 1 %. Worked value: 1.306e-3 at 10 degC.
     */
    public double dynamicViscosity() {
        double tau = temperature.kelvin() / 300;
        return 1e-6
                * (280.68 * Math.pow(tau, -1.9)
                        + 511.45 * Math.pow(tau, -7.7)
                        + 61.131 * Math.pow(tau, -19.6)
                        + 0.45903 * Math.pow(tau, -40));
    }

    /** Kinematic viscosity in m2/s: dynamic viscosity by density. Worked value: 1.306e-6 at 10 degC. */
    public double kinematicViscosity() {
        return dynamicViscosity() / density();
    }

    /**
     * Absolute vapour pressure.
     *
     * <p>Source: Wagner, W. and Pruss, A. 1993, International equations for the saturation properties of ordinary water
     * substance, J. Phys. Chem. Ref. Data 22(3), 783-787, equation 1 (IAPWS SR1-86); error below 0.1 %. Worked value:
     * 2339 Pa at 20 degC.
     */
    public Pressure vapourPressure() {
        double critical = 647.096;
        double x = 1 - temperature.kelvin() / critical;
        double exponent = -7.85951783 * x
                + 1.84408259 * Math.pow(x, 1.5)
                - 11.7866497 * Math.pow(x, 3)
                + 22.6807411 * Math.pow(x, 3.5)
                - 15.9618719 * Math.pow(x, 4)
                + 1.80122502 * Math.pow(x, 7.5);
        return new Pressure(22.064e6 * Math.exp(critical / temperature.kelvin() * exponent));
    }

    /**
     * Isothermal bulk modulus in Pa, the inverse of the isothermal compressibility.
     *
     * <p>Source: Kell 1975 (see {@link #density()}), table 1. Worked value: 2.179e9 at 20 degC.
     */
    public double isothermalBulkModulus() {
        double t = temperature.celsius();
        double top = 50.88496
                + t * (0.6163813 + t * (1.459187e-3 + t * (20.08438e-6 + t * (-58.47727e-9 + t * 410.4110e-12))));
        return 1e11 * (1 + 19.67348e-3 * t) / top;
    }

    /**
     * Speed of sound in unconfined water, m/s.
     *
     * <p>Source: Marczak, W. 1997, Water as a standard in the measurements of speed of sound in liquids, J. Acoust. Soc.
     * Am. 102(5), 2776-2779; 0-95 degC, error below 0.05 m/s. Worked value: 1482.4 at 20 degC.
     */
    public double soundSpeed() {
        double t = temperature.celsius();
        return 1402.385
                + t * (5.038813 + t * (-5.799136e-2 + t * (3.287156e-4 + t * (-1.398845e-6 + t * 2.787860e-9))));
    }

    /**
     * Bulk modulus that a quick pressure wave meets, in Pa: density times the square of the speed of sound.
     *
     * <p>It is the isentropic one, up to 2.6 % above the isothermal one at 40 degC. Worked value: 2.194e9 at 20 degC.
     */
    public double waveBulkModulus() {
        double c = soundSpeed();
        return density() * c * c;
    }
}
