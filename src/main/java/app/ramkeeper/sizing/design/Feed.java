package app.ramkeeper.sizing.design;

import app.ramkeeper.sizing.pipe.PipeRun;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.water.Ambient;

/**
 * The pipe from the source to a drive tank.
 *
 * @param pipe from source to tank
 * @param available water level at the source above the full tank's, more than 0
 */
public record Feed(PipeRun pipe, Head available) {

    /** Refuses a tank that is not below the source. */
    public Feed {
        Require.positive("head of the feed pipe", available.metres(), "m");
    }

    /**
     * The most it brings while the tank stays full. Worked value: 98.8 l/min for 60 m of 50 mm bore, roughness 2e-6 m, 1 m
     * of head and water of 10 degC.
     */
    public Flow capacity(Ambient ambient) {
        return pipe.flowFor(available, ambient).value();
    }
}
