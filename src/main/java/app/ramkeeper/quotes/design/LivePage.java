package app.ramkeeper.quotes.design;

import app.ramkeeper.identity.ForField;
import app.ramkeeper.quotes.survey.EnquiryId;
import app.ramkeeper.quotes.survey.Survey;
import app.ramkeeper.quotes.survey.SurveyForms;
import app.ramkeeper.quotes.survey.SurveyId;
import app.ramkeeper.quotes.survey.SurveyReader;
import app.ramkeeper.quotes.survey.SurveyRow;
import app.ramkeeper.quotes.survey.Surveys;
import app.ramkeeper.visits.form.TypedForm;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Keeps a survey while it is typed, and says beside the form what it comes to. */
@Controller
@ForField
class LivePage {

    private final Surveys surveys;
    private final Sizing sizing;

    LivePage(Surveys surveys, Sizing sizing) {
        this.surveys = surveys;
        this.sizing = sizing;
    }

    @PostMapping("/surveys/{id}/live")
    String live(@PathVariable UUID id, @RequestParam MultiValueMap<String, String> posted, Model model) {
        SurveyRow row = surveys.row(id);
        TypedForm form = new TypedForm(posted);
        String said = form.value("version");
        int version = said.matches("\\d{1,9}") ? Integer.parseInt(said) : -1;
        boolean kept = row.done()
                || row.version() == version && row.typed().equals(SurveyForms.kept(posted, form))
                || surveys.keep(id, version, new TypedForm(posted).date("surveyedOn"), SurveyForms.kept(posted, form));
        Survey survey = SurveyReader.read(form, new SurveyId(id), new EnquiryId(row.enquiry()));
        model.addAttribute("kept", kept);
        model.addAttribute("version", kept ? surveys.row(id).version() : version);
        model.addAttribute("problems", form.problems());
        model.addAttribute("form", form);
        model.addAttribute("options", survey == null ? null : sizing.options(survey));
        return "surveys/live :: live";
    }
}
