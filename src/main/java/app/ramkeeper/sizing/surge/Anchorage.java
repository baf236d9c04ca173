package app.ramkeeper.sizing.surge;

/**
 * How a pipe is held, which decides how much it can give to a pressure wave.
 *
 * <p>Source: Wylie, E. B. and Streeter, V. L. 1993, Fluid transients in systems, section 1-2, thick-walled forms (they turn
 * into the thin-walled 1 - mu/2, 1 - mu^2 and 1 for a thin wall).
 */
public enum Anchorage {
    /** Held at its upstream end only. */
    UPSTREAM_END {
        @Override
        double thin(double poisson) {
            return 1 - poisson / 2;
        }
    },
    /** Held against moving along itself everywhere, such as buried or clamped pipe. */
    THROUGHOUT {
        @Override
        double thin(double poisson) {
            return 1 - poisson * poisson;
        }
    },
    /** With expansion joints everywhere. */
    EXPANSION_JOINTS {
        @Override
        double thin(double poisson) {
            return 1;
        }
    };

    abstract double thin(double poisson);

    /**
     * Anchorage factor c1 of the wave speed formula.
     *
     * <p>c1 = 2 e/D (1 + mu) + D/(D + e) c, with c the thin-walled factor. Worked value: 1.03 for steel DN 50 medium
     * (bore 53.1 mm, wall 3.6 mm, mu 0.3) held throughout.
     *
     * @param poisson Poisson's ratio of the wall, 0 to 0.5
     * @param boreM bore, m
     * @param wallM wall, m
     */
    public double factor(double poisson, double boreM, double wallM) {
        return 2 * wallM / boreM * (1 + poisson) + boreM / (boreM + wallM) * thin(poisson);
    }
}
