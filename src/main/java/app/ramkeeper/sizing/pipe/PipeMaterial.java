package app.ramkeeper.sizing.pipe;

import app.ramkeeper.sizing.quantity.Length;

/** What a pipe is made of, with what hydraulics needs to know of it. */
public enum PipeMaterial {

    /** Polyethylene of 10 MPa minimum required strength. */
    PE100("PE100", 0.8e9, 0.46, 0.01, 150, true),

    /** Galvanised threaded steel tube. */
    GALVANISED_STEEL("galvanised steel", 207e9, 0.30, 0.15, 120, true),

    /** Polyvinyl chloride without plasticiser. It cracks under millions of pulses. */
    PVC_U("PVC-U", 3.0e9, 0.40, 0.01, 150, false);

    private final String words;
    private final double elasticity;
    private final double poisson;
    private final double roughnessMm;
    private final double hazenWilliams;
    private final boolean bearsPulses;

    PipeMaterial(
            String words,
            double elasticity,
            double poisson,
            double roughnessMm,
            double hazenWilliams,
            boolean bearsPulses) {
        this.words = words;
        this.elasticity = elasticity;
        this.poisson = poisson;
        this.roughnessMm = roughnessMm;
        this.hazenWilliams = hazenWilliams;
        this.bearsPulses = bearsPulses;
    }

    /** Name in sentences. */
    public String words() {
        return words;
    }

    /**
     * Short-term modulus of elasticity in Pa, for pressure waves.
     *
     * <p>Steel 207e9, PVC-U 3.0e9, PE100 0.8e9 (short term, 20 degC; falls with warmth). Source: Wylie, E. B. and
     * Streeter, V. L. 1993, Fluid transients in systems, table of elastic properties (steel, PVC); PE from memory.
     */
    public double elasticity() {
        return elasticity;
    }

    /** Poisson's ratio (same sources as {@link #elasticity()}). */
    public double poisson() {
        return poisson;
    }

    /**
     * Roughness height of new pipe.
     *
     * <p>Galvanised 0.15 mm: Moody, L. F. 1944, Friction factors for pipe flow, Trans. ASME 66, figure 2. Plastics 0.01
     * mm: inside the 0.003 to 0.015 mm usual for water mains, from memory. Old or scaled pipe is rougher: give your own.
     */
    public Length roughness() {
        return Length.ofMillimetres(roughnessMm);
    }

    /** Hazen-Williams coefficient of new pipe (handbook values: plastics 150, galvanised 120; from memory). */
    public double hazenWilliams() {
        return hazenWilliams;
    }

    /** Whether it may be drive pipe or stand beside the pump; common practice, no source. */
    public boolean bearsPulses() {
        return bearsPulses;
    }
}
