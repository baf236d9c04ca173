package app.ramkeeper.sizing.pipe;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Noted;
import app.ramkeeper.sizing.quantity.Numbers;
import app.ramkeeper.sizing.quantity.Power;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.water.Ambient;
import app.ramkeeper.sizing.water.Water;
import java.util.ArrayList;
import java.util.List;

/**
 * A run of round pipe of one bore with its fittings.
 *
 * @param bore inside diameter, more than 0
 * @param length along the pipe
 * @param roughness roughness height, less than a tenth of the bore
 * @param fittings sum of the loss coefficients K of its fittings, 0 or more
 */
public record PipeRun(Length bore, Length length, Length roughness, double fittings) {

    private static final double ROUGHEST = 0.05;
    private static final double FASTEST_RE = 1e8;

    /** Where the search for a flow starts, m3/s; the losses are nearly power laws, so it hardly matters. */
    private static final double SOME_FLOW = 1e-3;

    /** Where the search for a bore starts, m. */
    private static final double SOME_BORE = 0.05;

    /** Refuses a bore of nothing, a roughness of a tenth of the bore or more, and negative fittings. */
    public PipeRun {
        Require.positive("bore", bore.metres(), "m");
        Require.notNegative("loss coefficient of the fittings", fittings, "");
        if (roughness.metres() >= bore.metres() / 10) {
            throw new ImpossibleInput("roughness", roughness.metres(), "less than a tenth of the bore");
        }
    }

    /** A run of a catalogue pipe, new, with the roughness usual for its material. */
    public static PipeRun of(PipeType type, Length length, double fittings) {
        return new PipeRun(type.bore(), length, type.material().roughness(), fittings);
    }

    /** Mean velocity, m/s. Worked value: 3.056 for 6 l/s in 50 mm. */
    public double velocity(Flow flow) {
        return Friction.velocity(flow.cubicMetresPerSecond(), bore.metres());
    }

    /** Reynolds number of a flow. Worked value: 134 000 for 6 l/s in 50 mm at 15 degC. */
    public double reynolds(Flow flow, Water water) {
        return velocity(flow) * bore.metres() / water.kinematicViscosity();
    }

    /**
     * Head lost to friction and fittings (Darcy-Weisbach, {@link Friction}).
     *
     * <p>Error: about 5 % in the factor for new pipe, more where the bore is not known. Notes: Reynolds number of 2000 to
     * 4000, relative roughness above 0.05, Reynolds number above 1e8, water outside 0 to 40 degC. Worked value: 9.82 m
     * for 6 l/s over 60 m of 50 mm bore, roughness 2e-6 m, 15 degC.
     */
    public Noted<Head> headLoss(Flow flow, Ambient ambient) {
        double nu = ambient.water().kinematicViscosity();
        return new Noted<>(new Head(lossM(flow.cubicMetresPerSecond(), nu, ambient.gravity())), notes(flow, ambient));
    }

    /** Power the friction takes from the water. Worked value: 577 W for the example of {@link #headLoss}. */
    public Noted<Power> powerLost(Flow flow, Ambient ambient) {
        Noted<Head> loss = headLoss(flow, ambient);
        double watts = loss.value().metres() * ambient.specificWeight() * flow.cubicMetresPerSecond();
        return new Noted<>(new Power(watts), loss.notes());
    }

    /**
     * Flow that loses a given head: the inverse of {@link #headLoss}.
     *
     * <p>Worked value: 9.82 m over the example pipe gives back 6 l/s.
     *
     * @param loss head to be lost, 0 or more
     */
    public Noted<Flow> flowFor(Head loss, Ambient ambient) {
        Require.notNegative("head loss", loss.metres(), "m");
        Require.positive("pipe length", length.metres(), "m");
        if (loss.metres() == 0) {
            return Noted.of(Flow.NONE);
        }
        double nu = ambient.water().kinematicViscosity();
        double g = ambient.gravity();
        double flow = PowerLawRoot.solve("flow for a head loss", q -> lossM(q, nu, g), loss.metres(), SOME_FLOW, 1.9);
        Flow found = new Flow(flow);
        return new Noted<>(found, notes(found, ambient));
    }

    /**
     * Bore that loses just a given head at a flow; take the next larger pipe that is made.
     *
     * <p>Worked value: 0.35 m3/s over 150 m of smooth pipe losing 20 m at nu 1.655e-5 m2/s needs 0.27 m.
     *
     * @param flow more than 0
     * @param loss head to be lost, more than 0
     * @param length more than 0
     * @param roughness roughness height
     * @param fittings sum of loss coefficients K
     */
    public static Noted<Length> boreFor(
            Flow flow, Head loss, Length length, Length roughness, double fittings, Ambient ambient) {
        Require.positive("flow", flow.cubicMetresPerSecond(), "m3/s");
        Require.positive("head loss", loss.metres(), "m");
        Require.positive("pipe length", length.metres(), "m");
        Require.notNegative("loss coefficient of the fittings", fittings, "");
        double nu = ambient.water().kinematicViscosity();
        double bore = boreM(
                flow.cubicMetresPerSecond(),
                loss.metres(),
                length.metres(),
                roughness.metres(),
                fittings,
                nu,
                ambient.gravity());
        Length found = new Length(bore);
        PipeRun run = new PipeRun(found, length, roughness, fittings);
        return new Noted<>(found, run.notes(flow, ambient));
    }

    static double boreM(double q, double loss, double length, double roughness, double fittings, double nu, double g) {
        return PowerLawRoot.solve(
                "bore for a flow and head loss",
                d -> Friction.headLoss(q, d, length, roughness, fittings, nu, g),
                loss,
                SOME_BORE,
                -5);
    }

    private double lossM(double flowM3s, double nu, double g) {
        return Friction.headLoss(flowM3s, bore.metres(), length.metres(), roughness.metres(), fittings, nu, g);
    }

    private List<Note> notes(Flow flow, Ambient ambient) {
        List<Note> notes = new ArrayList<>(ambient.notes());
        double re = reynolds(flow, ambient.water());
        if (re >= Friction.LAMINAR_BELOW && re < Friction.TURBULENT_FROM) {
            notes.add(new Note(
                    Note.Code.TRANSITION,
                    Numbers.sentence(
                            "The flow is between laminar and turbulent (Reynolds number %.0f): the loss may be some 20 %% off.",
                            re)));
        }
        if (re > FASTEST_RE) {
            notes.add(Note.outside("Colebrook-White", "Reynolds number", re, Friction.TURBULENT_FROM, FASTEST_RE, ""));
        }
        double relative = roughness.metres() / bore.metres();
        if (relative > ROUGHEST) {
            notes.add(Note.outside("Colebrook-White", "relative roughness", relative, 0, ROUGHEST, ""));
        }
        return notes;
    }
}
