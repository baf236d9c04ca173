package app.ramkeeper.quotes.offer;

import app.ramkeeper.quotes.design.ChosenDesign;
import app.ramkeeper.quotes.design.ChosenDesign.PerDay;
import app.ramkeeper.quotes.design.ChosenDesign.PipeLine;
import app.ramkeeper.quotes.design.ChosenDesign.ProfilePoint;
import app.ramkeeper.quotes.design.ChosenDesign.RuleLine;
import app.ramkeeper.quotes.design.ChosenDesign.Vessel;
import app.ramkeeper.quotes.design.DesignId;
import app.ramkeeper.quotes.survey.EnquiryId;
import app.ramkeeper.quotes.survey.SurveyId;
import java.util.List;
import java.util.UUID;

/** Chosen designs for tests. */
public final class Designs {

    private Designs() {}

    /** One pump, 12 m of drive pipe, 415 m of one delivery pipe in two stretches and 205 m of another. */
    public static ChosenDesign of(UUID model, UUID drive, UUID heavy, UUID light) {
        return of(SurveyId.next(), model, drive, heavy, light);
    }

    static ChosenDesign of(SurveyId survey, UUID model, UUID drive, UUID heavy, UUID light) {
        return new ChosenDesign(
                DesignId.next(),
                survey,
                EnquiryId.next(),
                model,
                "Heron 50",
                1,
                new PipeLine(drive, "Steel 50", 0, 12, 12, 53.1, 25.),
                List.of(
                        new PipeLine(heavy, "PE 32 16 bar", 0, 200, 205, 26, 16.),
                        new PipeLine(light, "PE 32 10 bar", 200, 400, 205, 28, 10.),
                        new PipeLine(heavy, "PE 32 16 bar", 400, 600, 210, 26, 16.)),
                new Vessel(18, 3.5, 10),
                new PerDay(3200, 3900, 4500),
                3000,
                2.4,
                38,
                62,
                2.7,
                List.of(new RuleLine("Velocity in the drive pipe", "close to its limit", "0.47 m/s", "Secret reason")),
                List.of(
                        new ProfilePoint(0, 0, 38, 44, 16.),
                        new ProfilePoint(200, 12, 38, 42, 16.),
                        new ProfilePoint(600, 38, 38, 38, 16.)),
                List.of("The source gives 80 l/min in a dry month."),
                List.of("Licence to take 4 500 l/day is asked for at the water authority."));
    }
}
