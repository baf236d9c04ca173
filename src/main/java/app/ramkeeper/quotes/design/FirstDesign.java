package app.ramkeeper.quotes.design;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.quotes.survey.EnquiryId;
import app.ramkeeper.quotes.survey.Survey;
import app.ramkeeper.quotes.survey.SurveyForms;
import app.ramkeeper.quotes.survey.SurveyId;
import app.ramkeeper.quotes.survey.SurveyReader;
import app.ramkeeper.quotes.survey.SurveyRow;
import app.ramkeeper.quotes.survey.Surveys;
import app.ramkeeper.sizing.design.DeliveryForecast;
import java.util.Map;
import java.util.Objects;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Chooses what the search puts first for a survey, as somebody does who takes the list's first design unaltered. */
@Service
@ForOffice
@Transactional
public class FirstDesign {

    private final Surveys surveys;
    private final Sizing sizing;
    private final DesignStore store;

    FirstDesign(Surveys surveys, Sizing sizing, DesignStore store) {
        this.surveys = surveys;
        this.sizing = sizing;
        this.store = store;
    }

    public ChosenDesign choose(SurveyId id, PersonId by) {
        SurveyRow row = surveys.row(id.value());
        Survey survey = Objects.requireNonNull(
                SurveyReader.read(SurveyForms.of(row), id, new EnquiryId(row.enquiry())), "The survey is not complete");
        Selection selection = sizing.options(survey).first().orElseThrow().selection();
        Worked worked = Workout.of(survey, sizing.supply(), selection, DeliveryForecast.USUAL_EVALUATIONS);
        ChosenDesign design = Choosing.of(DesignId.next(), survey, worked, Map.of());
        store.keep(design, Curves.of(survey, worked), by);
        return design;
    }
}
