package app.ramkeeper.quotes.survey;

import app.ramkeeper.sizing.line.GroundProfile;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Uncertain;
import app.ramkeeper.sizing.source.DrySeason;
import app.ramkeeper.sizing.source.FlowMeasurement;
import app.ramkeeper.sizing.water.Ambient;
import java.util.List;

/**
 * What a survey says once it is complete: all that sizing needs.
 *
 * @param demand mean over the day
 * @param measured the source on the day
 * @param dry what is left of it in the dry month, and what must stay in the stream
 * @param fall m
 * @param driveLengthM of each drive pipe
 * @param ground delivery route from the pump on
 * @param tankLevelM level the water must reach, datum of the ground
 * @param lift highest point of it above the pump, m
 * @param pipeWallC warmest the delivery pipe gets, degC
 * @param mayShut whether a float valve, frost or a hand can shut the delivery
 * @param assumptions what was taken for granted, in plain words
 * @param openPoints what is still to be settled before work starts
 */
public record Survey(
        SurveyId id,
        EnquiryId enquiry,
        Flow demand,
        FlowMeasurement measured,
        DrySeason dry,
        Uncertain fall,
        double driveLengthM,
        GroundProfile ground,
        double tankLevelM,
        Uncertain lift,
        Ambient ambient,
        double pipeWallC,
        boolean mayShut,
        boolean drinkingWater,
        int mostPumps,
        List<String> assumptions,
        List<String> openPoints) {

    /** Keeps its own copies. */
    public Survey {
        assumptions = List.copyOf(assumptions);
        openPoints = List.copyOf(openPoints);
    }

    /** What may be taken in the dry month. */
    public FlowMeasurement usable() {
        return dry.usable(measured);
    }
}
