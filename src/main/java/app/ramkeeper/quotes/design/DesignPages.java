package app.ramkeeper.quotes.design;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.quotes.price.Prices;
import app.ramkeeper.quotes.survey.EnquiryId;
import app.ramkeeper.quotes.survey.Survey;
import app.ramkeeper.quotes.survey.SurveyForms;
import app.ramkeeper.quotes.survey.SurveyId;
import app.ramkeeper.quotes.survey.SurveyReader;
import app.ramkeeper.quotes.survey.SurveyRow;
import app.ramkeeper.quotes.survey.Surveys;
import app.ramkeeper.sizing.design.DeliveryForecast;
import app.ramkeeper.sizing.quantity.Check;
import app.ramkeeper.visits.form.TypedForm;
import app.ramkeeper.web.Choice;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The designs that a survey allows, the one at hand, and the choice. */
@Controller
@ForOffice
class DesignPages {

    private static final String TRY = "designs/try";

    private final Surveys surveys;
    private final Sizing sizing;
    private final DesignStore store;
    private final Prices prices;

    DesignPages(Surveys surveys, Sizing sizing, DesignStore store, Prices prices) {
        this.surveys = surveys;
        this.sizing = sizing;
        this.store = store;
        this.prices = prices;
    }

    @GetMapping("/surveys/{id}/designs")
    String options(@PathVariable UUID id, Model model) {
        Survey survey = survey(id);
        if (survey == null) {
            return "redirect:/surveys/" + id + "?check=yes";
        }
        Options options = sizing.options(survey);
        model.addAttribute("options", options);
        model.addAttribute("survey", survey);
        String currency = prices.settings().currency();
        model.addAttribute("currency", currency);
        if (!options.feasible()) {
            return "designs/not";
        }
        model.addAttribute("first", options.first().orElseThrow());
        model.addAttribute("plot", Plots.options(options, currency));
        return "designs/options";
    }

    @GetMapping("/surveys/{id}/designs/try")
    Object look(@PathVariable UUID id, @RequestParam MultiValueMap<String, String> asked, Model model) {
        Survey survey = survey(id);
        if (survey == null) {
            return "redirect:/surveys/" + id + "?check=yes";
        }
        TypedForm form = new TypedForm(asked);
        Supply supply = sizing.supply();
        Selection selection = SelectionReader.read(form, survey, supply);
        show(model, survey, supply, form, work(survey, supply, selection));
        return selection == null ? Saving.again(TRY, model) : TRY;
    }

    @PostMapping("/surveys/{id}/designs")
    ModelAndView choose(
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> posted,
            Model model,
            RedirectAttributes flash,
            @AuthenticationPrincipal CurrentUser user) {
        Survey survey = survey(id);
        if (survey == null) {
            return new ModelAndView("redirect:/surveys/" + id + "?check=yes");
        }
        TypedForm form = new TypedForm(posted);
        Supply supply = sizing.supply();
        Worked worked = work(survey, supply, SelectionReader.read(form, survey, supply));
        Map<String, String> reasons = worked == null ? Map.of() : reasons(form, worked);
        if (worked == null || form.hasProblems()) {
            show(model, survey, supply, form, worked);
            return Saving.again(TRY, model);
        }
        ChosenDesign design = Choosing.of(DesignId.next(), survey, worked, reasons);
        store.keep(design, Curves.of(survey, worked), new PersonId(user.person()));
        flash.addFlashAttribute("saved", Saved.of("surveys.saved.chosenItStaysAs"));
        return new ModelAndView("redirect:/designs/" + design.id());
    }

    @GetMapping("/designs/{id}")
    String chosen(@PathVariable UUID id, Model model) {
        DesignStore.Kept kept = store.kept(id);
        ChosenDesign design = kept.design();
        model.addAttribute("design", design);
        model.addAttribute("chosenOn", kept.chosenOn());
        model.addAttribute("chosenBy", kept.chosenBy());
        model.addAttribute("curves", kept.curves());
        model.addAttribute("profilePlot", Plots.profile(design.profile(), design.delivery()));
        model.addAttribute("valvePlot", Plots.valve(kept.curves()));
        model.addAttribute("sourcePlot", Plots.source(kept.curves(), design.demandLDay()));
        return "designs/chosen";
    }

    private @Nullable Survey survey(UUID id) {
        SurveyRow row = surveys.row(id);
        return SurveyReader.read(SurveyForms.of(row), new SurveyId(id), new EnquiryId(row.enquiry()));
    }

    private static @Nullable Worked work(Survey survey, Supply supply, @Nullable Selection selection) {
        return selection == null ? null : Workout.of(survey, supply, selection, DeliveryForecast.USUAL_EVALUATIONS);
    }

    /** Why each broken rule is accepted; one without a reason is a problem of the form. */
    private static Map<String, String> reasons(TypedForm form, Worked worked) {
        Map<String, String> reasons = new LinkedHashMap<>();
        List<Check> broken = worked.broken();
        for (int i = 0; i < broken.size(); i++) {
            String why = form.text("why" + i, 500);
            if (why == null) {
                form.problem(
                        "why" + i, "Say why this is accepted: " + broken.get(i).rule() + ".");
            } else {
                reasons.put(Choosing.key(broken.get(i)), why);
            }
        }
        return reasons;
    }

    private void show(Model model, Survey survey, Supply supply, TypedForm form, @Nullable Worked worked) {
        model.addAttribute("form", form);
        model.addAttribute("survey", survey);
        model.addAttribute("worked", worked);
        model.addAttribute("currency", prices.settings().currency());
        model.addAttribute("rows", Math.min(SelectionReader.ROWS, filled(form) + 1));
        model.addAttribute(
                "pumpChoices",
                supply.models().values().stream()
                        .map(m -> new Choice(m.modelId().toString(), m.name()))
                        .toList());
        model.addAttribute(
                "driveChoices",
                supply.drivePipes().values().stream()
                        .map(p -> new Choice(p.id().toString(), p.name()))
                        .toList());
        model.addAttribute(
                "pipeChoices",
                supply.deliveryPipes().values().stream()
                        .map(p -> new Choice(p.id().toString(), p.name()))
                        .toList());
        if (worked != null) {
            Curves curves = Curves.of(survey, worked);
            List<ChosenDesign.PipeLine> delivery = Choosing.delivery(survey, worked);
            List<ChosenDesign.ProfilePoint> profile =
                    Choosing.profile(worked.line(), survey.ground().pumpLevelM());
            model.addAttribute("curves", curves);
            model.addAttribute("delivery", delivery);
            model.addAttribute("profile", profile);
            model.addAttribute("profilePlot", Plots.profile(profile, delivery));
            model.addAttribute("valvePlot", Plots.valve(curves));
            model.addAttribute(
                    "sourcePlot", Plots.source(curves, survey.demand().litresPerDay()));
        }
    }

    private static int filled(TypedForm form) {
        int filled = 0;
        for (int i = 0; i < SelectionReader.ROWS; i++) {
            filled = form.value("pipe" + i).isEmpty() && form.value("to" + i).isEmpty() ? filled : i + 1;
        }
        return filled;
    }
}
