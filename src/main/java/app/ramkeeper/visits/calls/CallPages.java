package app.ramkeeper.visits.calls;

import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.InstallCard;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.visits.Symptom;
import app.ramkeeper.visits.VisitChoices;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import java.time.Clock;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Taking a call, and changing what was put down; the search step works without script by the button "find". */
@Controller
@ForOffice
@RequestMapping("/calls")
class CallPages {

    private static final String FORM = "visits/call-form";
    private static final int FOUND = 8;

    private final Calls calls;
    private final CallCompanion companion;
    private final Fleet fleet;
    private final RestartAdvice advice;
    private final VisitChoices choices;
    private final Saving saving;
    private final Clock clock;

    CallPages(
            Calls calls,
            CallCompanion companion,
            Fleet fleet,
            RestartAdvice advice,
            VisitChoices choices,
            Saving saving,
            Clock clock) {
        this.calls = calls;
        this.companion = companion;
        this.fleet = fleet;
        this.advice = advice;
        this.choices = choices;
        this.saving = saving;
        this.clock = clock;
    }

    @GetMapping
    String list(
            @RequestParam(required = false) @Nullable String show,
            @RequestParam(required = false) @Nullable String after,
            Model model) {
        boolean all = "all".equals(show);
        model.addAttribute("all", all);
        model.addAttribute("now", clock.instant());
        if (all) {
            model.addAttribute("slice", calls.all(after));
        }
        model.addAttribute("calls", all ? List.of() : calls.open());
        return "visits/calls";
    }

    @GetMapping("/new")
    String fresh(@RequestParam(required = false) @Nullable UUID site, Model model) {
        CallForm form = CallForm.blank(site);
        model.addAttribute("form", form);
        fill(model, form, null);
        return FORM;
    }

    /** The site's story beside the form, as soon as a site is picked. */
    @GetMapping("/beside")
    String beside(@RequestParam(required = false) @Nullable UUID site, Model model) {
        model.addAttribute("beside", site == null ? null : companion.of(new SiteId(site)));
        return "visits/call-beside :: beside";
    }

    /** What may be said on the phone, as soon as it is clear what the caller sees. */
    @GetMapping("/advice")
    String advice(@RequestParam(required = false) @Nullable Symptom symptom, Model model) {
        model.addAttribute("steps", symptom == null ? List.of() : advice.steps(symptom));
        return "visits/call-beside :: steps";
    }

    @PostMapping
    ModelAndView take(
            @Valid @ModelAttribute("form") CallForm form,
            BindingResult errors,
            @RequestParam(required = false) @Nullable String find,
            Model model,
            RedirectAttributes flash,
            @AuthenticationPrincipal CurrentUser user) {
        if (find != null) {
            return found(form, errors, model, null);
        }
        boolean[] same = {true};
        check(form, errors);
        if (form.promisedBy() != null && form.promisedBy().isBefore(LocalDateTime.now(clock))) {
            errors.rejectValue("promisedBy", "calls.promisedBefore", "This time is past already.");
        }
        if (!saving.did(errors, () -> same[0] = calls.take(form, new PersonId(user.person())))) {
            fill(model, form, null);
            return Saving.again(FORM, model).addObject("form", form);
        }
        if (!same[0]) {
            errors.reject("calls.taken", "This call is on record already with other words.");
            fill(model, form, null);
            model.addAttribute("taken", form.id());
            return new ModelAndView(FORM, model.asMap(), HttpStatus.CONFLICT);
        }
        flash.addFlashAttribute("saved", Saved.of("calls.saved.putDownPlanThe"));
        return new ModelAndView("redirect:/calls/" + form.id());
    }

    @GetMapping("/{id}/edit")
    String edit(@PathVariable UUID id, Model model) {
        CallForm form = calls.view(id).form();
        model.addAttribute("form", form);
        fill(model, form, id);
        return FORM;
    }

    @PostMapping("/{id}/edit")
    ModelAndView save(
            @PathVariable UUID id,
            @Valid @ModelAttribute("form") CallForm form,
            BindingResult errors,
            @RequestParam(required = false) @Nullable String find,
            Model model,
            RedirectAttributes flash) {
        CallForm present = calls.view(id).form();
        if (find != null) {
            return found(form, errors, model, id);
        }
        boolean[] mine = {true};
        check(form, errors);
        if (!saving.did(errors, () -> mine[0] = calls.change(id, form))) {
            fill(model, form, id);
            return Saving.again(FORM, model).addObject("form", form);
        }
        if (!mine[0]) {
            fill(model, form, id);
            return LostUpdate.between(form.bare(), present.bare(), "calls.")
                    .page(FORM, model, Objects.requireNonNull(present.version()));
        }
        flash.addFlashAttribute("saved", Saved.of("calls.saved.saved"));
        return new ModelAndView("redirect:/calls/" + id);
    }

    /** The form as it stands, with the sites found; nothing is saved and nothing is complained about. */
    private ModelAndView found(CallForm form, BindingResult errors, Model model, @Nullable UUID id) {
        fill(model, form, id);
        String q = form.q();
        model.addAttribute("found", q == null ? List.of() : fleet.search(q, FOUND));
        return Saving.asItStands(FORM, model, form, errors);
    }

    private void check(CallForm form, BindingResult errors) {
        if (form.site() == null && form.placeText() == null) {
            errors.rejectValue("q", "calls.noPlace", "Find the site, or say in words where it is.");
        }
        if (form.promisedBy() != null && form.promise() == null) {
            errors.rejectValue("promise", "calls.noPromise", "Say what was promised for that time.");
        }
        UUID site = form.site();
        if (site == null) {
            return;
        }
        try {
            List<InstallCard> there =
                    fleet.installsOf(fleet.site(new SiteId(site)).id());
            if (form.install() != null
                    && there.stream().noneMatch(i -> i.id().value().equals(form.install()))) {
                errors.rejectValue("install", "calls.notThere", "This install is at another site.");
            }
        } catch (Missing gone) {
            errors.rejectValue("q", "calls.noSite", "There is no such site. Find it again.");
        }
    }

    private void fill(Model model, CallForm form, @Nullable UUID id) {
        model.addAttribute("id", id);
        model.addAttribute("q", form.q());
        model.addAttribute("found", List.of());
        model.addAttribute("symptoms", choices.symptoms());
        model.addAttribute("cautions", advice.cautions());
        model.addAttribute("steps", form.symptom() == null ? List.of() : advice.steps(form.symptom()));
        model.addAttribute("beside", form.site() == null ? null : companion.ofKnown(new SiteId(form.site())));
    }
}
