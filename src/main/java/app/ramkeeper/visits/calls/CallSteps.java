package app.ramkeeper.visits.calls;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.People;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.visits.ReportRefused;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import app.ramkeeper.web.Say;
import jakarta.validation.Valid;
import java.util.Objects;
import java.util.UUID;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** A call's page and its next steps: the visit that answers it, and its end. */
@Controller
@ForOffice
@RequestMapping("/calls/{id}")
class CallSteps {

    private static final String VIEW = "visits/call";
    private static final int USUAL_MINUTES = 60;

    private final Calls calls;
    private final People people;
    private final DraftedVisits drafts;
    private final Saving saving;
    private final Say say;

    CallSteps(Calls calls, People people, DraftedVisits drafts, Saving saving, Say say) {
        this.calls = calls;
        this.people = people;
        this.drafts = drafts;
        this.saving = saving;
        this.say = say;
    }

    @GetMapping
    String show(@PathVariable UUID id, Model model) {
        fill(model, calls.view(id));
        return VIEW;
    }

    @PostMapping("/visit")
    ModelAndView plan(
            @PathVariable UUID id,
            @Valid @ModelAttribute("visitForm") CallVisitForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes flash) {
        CallView call = calls.view(id);
        if (!call.wantsVisit()) {
            throw new Conflict("This call has its visit, has no site yet, or is closed.");
        }
        try {
            if (saving.did(errors, () -> calls.plan(id, form))) {
                flash.addFlashAttribute("saved", Saved.of("calls.saved.theVisitIsOn", say.date(form.on())));
                return new ModelAndView("redirect:/calls/" + id);
            }
        } catch (ReportRefused refused) {
            refused.problems().forEach(problem -> errors.reject("plan", problem.sentence()));
        }
        fill(model, call);
        return Saving.again(VIEW, model).addObject("visitForm", form);
    }

    @PostMapping("/close")
    ModelAndView close(
            @PathVariable UUID id,
            @Valid @ModelAttribute("closeForm") CallCloseForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes flash,
            @AuthenticationPrincipal CurrentUser user) {
        CallView call = calls.view(id);
        if (errors.hasErrors()) {
            fill(model, call);
            return Saving.again(VIEW, model).addObject("closeForm", form);
        }
        calls.close(id, Objects.requireNonNull(form.closedNote()), new PersonId(user.person()));
        flash.addFlashAttribute("saved", Saved.of("calls.saved.theCallIsClosed"));
        return new ModelAndView("redirect:/calls/" + id);
    }

    private void fill(Model model, CallView call) {
        model.addAttribute("call", call);
        UUID visit = call.line().visitId();
        model.addAttribute(
                "draft",
                visit == null || !"PLANNED".equals(call.visitState())
                        ? null
                        : drafts.of(visit).orElse(null));
        model.addAttribute("people", People.choices(people.fieldPeopleOn(say.today())));
        if (!model.containsAttribute("visitForm")) {
            model.addAttribute("visitForm", new CallVisitForm(say.today(), null, USUAL_MINUTES, null, null));
        }
        if (!model.containsAttribute("closeForm")) {
            model.addAttribute("closeForm", new CallCloseForm(null));
        }
    }
}
