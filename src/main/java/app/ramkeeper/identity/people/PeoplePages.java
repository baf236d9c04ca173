package app.ramkeeper.identity.people;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForAdministrator;
import app.ramkeeper.identity.People;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.OptimisticLockingFailureException;
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

/** The company's people: list, page, form. */
@Controller
@ForAdministrator
@RequestMapping("/people")
class PeoplePages {

    private static final String FORM = "identity/person-form";

    private final PersonAdmin admin;
    private final PersonScreen screen;
    private final DaysAway away;
    private final Erasure erasure;
    private final People people;
    private final Saving saving;

    PeoplePages(PersonAdmin admin, PersonScreen screen, DaysAway away, Erasure erasure, People people, Saving saving) {
        this.admin = admin;
        this.screen = screen;
        this.away = away;
        this.erasure = erasure;
        this.people = people;
        this.saving = saving;
    }

    @GetMapping
    String list(Model model) {
        model.addAttribute("people", admin.list());
        return "identity/people";
    }

    @GetMapping("/new")
    String blank(Model model) {
        model.addAttribute("form", PersonForm.blank());
        return form(model);
    }

    @PostMapping
    ModelAndView add(
            @Valid @ModelAttribute("form") PersonForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        AtomicReference<PersonId> made = new AtomicReference<>();
        if (!saving.did(errors, () -> made.set(admin.add(form)))) {
            return Saving.again(form(model), model);
        }
        redirect.addFlashAttribute("saved", Saved.of("identity.saved.personAdded"));
        return new ModelAndView("redirect:/people/" + made.get());
    }

    @GetMapping("/{id}")
    String show(@PathVariable UUID id, Model model) {
        return screen.fill(id, model);
    }

    @GetMapping("/{id}/edit")
    String edit(@PathVariable UUID id, Model model) {
        model.addAttribute("id", id);
        model.addAttribute("form", admin.read(id));
        return form(model);
    }

    @PostMapping("/{id}/edit")
    ModelAndView change(
            @PathVariable("id") UUID id,
            @Valid @ModelAttribute("form") PersonForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        model.addAttribute("id", id);
        try {
            if (!saving.did(errors, () -> admin.change(id, form))) {
                return Saving.again(form(model), model);
            }
        } catch (OptimisticLockingFailureException lost) {
            PersonForm present = admin.read(id);
            Integer version = present.version();
            return LostUpdate.between(form, present, "identity.person.")
                    .page(form(model), model, version == null ? 0 : version);
        }
        redirect.addFlashAttribute("saved", Saved.of("identity.saved.personSaved"));
        return new ModelAndView("redirect:/people/" + id);
    }

    @PostMapping("/{id}/leave")
    ModelAndView addLeave(
            @PathVariable("id") UUID id,
            @Valid @ModelAttribute("leaveForm") LeaveForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        if (!saving.did(errors, () -> away.add(id, form))) {
            return Saving.again(screen.fill(id, model), model);
        }
        redirect.addFlashAttribute("saved", Saved.of("identity.saved.daysAwaySaved"));
        return new ModelAndView("redirect:/people/" + id);
    }

    @PostMapping("/{id}/leave/{leave}/remove")
    String removeLeave(@PathVariable UUID id, @PathVariable UUID leave, RedirectAttributes redirect) {
        away.remove(id, leave);
        redirect.addFlashAttribute("saved", Saved.of("identity.saved.daysAwayRemoved"));
        return "redirect:/people/" + id;
    }

    @PostMapping("/{id}/erase")
    String erase(
            @PathVariable UUID id,
            @RequestParam @Nullable String name,
            @AuthenticationPrincipal CurrentUser user,
            RedirectAttributes redirect) {
        erasure.erase(id, name == null ? "" : name, user);
        redirect.addFlashAttribute("saved", Saved.of("identity.saved.thePersonIsErased"));
        return "redirect:/people/" + id;
    }

    private String form(Model model) {
        model.addAttribute("depots", people.depotChoices());
        model.addAttribute("skills", people.skills());
        return FORM;
    }
}
