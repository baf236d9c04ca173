package app.ramkeeper.sizing.surge;

import app.ramkeeper.sizing.pipe.PipeMaterial;
import app.ramkeeper.sizing.pipe.PipeType;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.water.Water;

/** Water hammer in one pipe: wave speed and the pressure rise of a closing valve. */
public final class Surge {

    private Surge() {}

    /**
     * Speed of a pressure wave in a pipe of elastic wall, m/s.
     *
     * <p>a = sqrt(K/rho) / sqrt(1 + c1 K D/(E e)). Free air in the water lowers it much; this is for water without.
     * Source: Korteweg, D. J. 1878; Wylie and Streeter 1993, equation 2.6 (see {@link Anchorage}). Worked value: 1374.9
     * for K 2.18e9, rho 998.2, E 2.07e11, bore 53.1 mm, wall 3.6 mm, c1 1.
     *
     * @param bulkModulus of the water, Pa
     * @param density of the water, kg/m3
     * @param elasticity of the wall, Pa; infinite for a rigid one
     * @param boreM bore, m
     * @param wallM wall, m
     * @param anchorage factor c1, 1 for the plain formula
     */
    public static double waveSpeed(
            double bulkModulus, double density, double elasticity, double boreM, double wallM, double anchorage) {
        Require.positive("bulk modulus", bulkModulus, "Pa");
        Require.positive("density", density, "kg/m3");
        if (!(elasticity > 0)) {
            throw new ImpossibleInput("elasticity", elasticity, "more than 0 Pa");
        }
        Require.positive("bore", boreM, "m");
        Require.positive("wall", wallM, "m");
        Require.positive("anchorage factor", anchorage, "");
        double give = anchorage * bulkModulus / elasticity * boreM / wallM;
        return Math.sqrt(bulkModulus / density / (1 + give));
    }

    /**
     * Speed of a pressure wave in a catalogue pipe, m/s, with the wave's own (isentropic) bulk modulus of the water.
     *
     * <p>Worked value: 1348 for galvanised DN 50 medium held throughout, 10 degC.
     */
    public static double waveSpeed(Water water, PipeType pipe, Anchorage anchorage) {
        PipeMaterial material = pipe.material();
        double bore = pipe.bore().metres();
        double wall = pipe.wall().metres();
        return waveSpeed(
                water.waveBulkModulus(),
                water.density(),
                material.elasticity(),
                bore,
                wall,
                anchorage.factor(material.poisson(), bore, wall));
    }

    /**
     * Pressure rise when a velocity is stopped quicker than the wave returns: rho a V.
     *
     * <p>Source: Joukowsky, N. 1900, On the hydraulic hammer in water supply pipes. Worked value: 10.0 bar, 102 m, for
     * 1 m/s at 1000 m/s.
     *
     * @param density kg/m3
     * @param waveSpeed m/s
     * @param velocityChange m/s, 0 or more
     */
    public static Pressure joukowsky(double density, double waveSpeed, double velocityChange) {
        Require.positive("density", density, "kg/m3");
        Require.positive("wave speed", waveSpeed, "m/s");
        return new Pressure(density * waveSpeed * Require.notNegative("velocity change", velocityChange, "m/s"));
    }

    /**
     * Mean pressure rise when a column is slowed evenly over a time longer than the wave needs: rho L V / T.
     *
     * <p>Rigid column; the peak of a valve that shuts evenly may reach twice this, see {@link #closing}. Worked value: 300
     * kPa for 2500 m, 1.2 m/s, 10 s, 1000 kg/m3.
     */
    public static Pressure evenlySlowed(double density, double lengthM, double velocityChange, double seconds) {
        Require.positive("density", density, "kg/m3");
        Require.notNegative("pipe length", lengthM, "m");
        Require.notNegative("velocity change", velocityChange, "m/s");
        Require.positive("closing time", seconds, "s");
        return new Pressure(density * lengthM * velocityChange / seconds);
    }

    /**
     * Peak pressure rise of a valve that shuts evenly.
     *
     * <p>Full {@link #joukowsky} up to the time 2 L/a in which the wave returns; after that Michaud's 2 rho L V / T, an
     * upper bound that joins it there. Source: Michaud, J. 1878, Coups de belier dans les conduites, Bull. Soc. Vaudoise
     * Ing. Arch. Worked value: 600 kPa for the pipe of {@link #evenlySlowed} with a 1000 m/s.
     *
     * @param density kg/m3
     * @param waveSpeed m/s
     * @param lengthM pipe length, m
     * @param velocityChange m/s
     * @param seconds closing time, 0 for at once
     */
    public static Pressure closing(
            double density, double waveSpeed, double lengthM, double velocityChange, double seconds) {
        Require.notNegative("closing time", seconds, "s");
        Pressure quick = joukowsky(density, waveSpeed, velocityChange);
        return seconds <= 2 * lengthM / waveSpeed
                ? quick
                : evenlySlowed(density, lengthM, velocityChange, seconds).times(2);
    }

    /** Time in which a wave runs to the intake and back, s: 2 L/a. Worked value: 0.0185 s for 12 m at 1300 m/s. */
    public static double returnTime(double lengthM, double waveSpeed) {
        return 2 * Require.notNegative("pipe length", lengthM, "m") / Require.positive("wave speed", waveSpeed, "m/s");
    }
}
