package app.ramkeeper.identity.people;

import app.ramkeeper.identity.ForAdministrator;
import app.ramkeeper.identity.People;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import java.util.UUID;
import org.springframework.dao.OptimisticLockingFailureException;
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

/** Depots: list and form. */
@Controller
@ForAdministrator
@RequestMapping("/depots")
class DepotPages {

    private static final String FORM = "identity/depot-form";

    private final DepotAdmin admin;
    private final People people;
    private final Saving saving;

    DepotPages(DepotAdmin admin, People people, Saving saving) {
        this.admin = admin;
        this.people = people;
        this.saving = saving;
    }

    @GetMapping
    String list(Model model) {
        model.addAttribute("depots", people.depots());
        return "identity/depots";
    }

    @GetMapping("/new")
    String blank(Model model) {
        model.addAttribute("form", DepotForm.blank());
        return FORM;
    }

    @PostMapping
    ModelAndView add(
            @Valid @ModelAttribute("form") DepotForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        if (!saving.did(errors, () -> admin.add(form))) {
            return Saving.again(FORM, model);
        }
        redirect.addFlashAttribute("saved", Saved.of("identity.saved.depotAdded"));
        return new ModelAndView("redirect:/depots");
    }

    @GetMapping("/{id}/edit")
    String edit(@PathVariable UUID id, Model model) {
        model.addAttribute("id", id);
        model.addAttribute("form", admin.read(id));
        return FORM;
    }

    @PostMapping("/{id}/edit")
    ModelAndView change(
            @PathVariable("id") UUID id,
            @Valid @ModelAttribute("form") DepotForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        model.addAttribute("id", id);
        try {
            if (!saving.did(errors, () -> admin.change(id, form))) {
                return Saving.again(FORM, model);
            }
        } catch (OptimisticLockingFailureException lost) {
            DepotForm present = admin.read(id);
            Integer version = present.version();
            return LostUpdate.between(form, present, "identity.depot.")
                    .page(FORM, model, version == null ? 0 : version);
        }
        redirect.addFlashAttribute("saved", Saved.of("identity.saved.depotSaved"));
        return new ModelAndView("redirect:/depots");
    }
}
