package app.ramkeeper.quotes.design;

import app.ramkeeper.quotes.survey.EnquiryId;
import app.ramkeeper.quotes.survey.SurveyId;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * The design that the office chose for a survey: all that a quote and a hand-over need of it.
 *
 * @param pumpModelId of the catalogue
 * @param pumps side by side
 * @param drive pipe of each pump
 * @param delivery line by stretch, from the pump on
 * @param perDay what arrives in a day of a dry month, as a range
 * @param demandLDay what was asked for
 * @param driveFlowLMin of all pumps together
 * @param deliveredLMin of all pumps together, at the design point
 * @param rules of design with their verdicts; a broken one carries the reason why it was accepted
 * @param assumptions in plain words, for the customer
 * @param openPoints consents and the like, still to be settled
 */
public record ChosenDesign(
        DesignId id,
        SurveyId survey,
        EnquiryId enquiry,
        UUID pumpModelId,
        String pumpName,
        int pumps,
        PipeLine drive,
        List<PipeLine> delivery,
        Vessel vessel,
        PerDay perDay,
        double demandLDay,
        double fallM,
        double liftM,
        double driveFlowLMin,
        double deliveredLMin,
        List<RuleLine> rules,
        List<ProfilePoint> profile,
        List<String> assumptions,
        List<String> openPoints) {

    /** Keeps its own copies. */
    public ChosenDesign {
        delivery = List.copyOf(delivery);
        rules = List.copyOf(rules);
        profile = List.copyOf(profile);
        assumptions = List.copyOf(assumptions);
        openPoints = List.copyOf(openPoints);
    }

    /**
     * One pipe from a chainage to another.
     *
     * @param pricedPipeId of the price list; null if it is not on it
     * @param lengthM along the slope
     * @param classBar pressure class, if it has one
     */
    public record PipeLine(
            @Nullable UUID pricedPipeId,
            String name,
            double fromM,
            double toM,
            double lengthM,
            double boreMm,
            @Nullable Double classBar) {}

    /** The least pressure vessel that does. */
    public record Vessel(double litres, double preChargeBar, double ratingBar) {}

    /** Litres in a day: passed with 90 %, even and 10 % chance. */
    public record PerDay(double p10, double p50, double p90) {}

    /** A rule of design: holds, close to its limit, does not hold. */
    public record RuleLine(
            String name,
            String verdict,
            String words,
            @Nullable String acknowledgedReason) {}

    /** A point of the delivery line, levels above the pump. */
    public record ProfilePoint(
            double chainageM,
            double levelM,
            double staticM,
            double headM,
            @Nullable Double pressureClassBar) {}
}
