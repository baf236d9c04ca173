package app.ramkeeper.identity.people;

import app.ramkeeper.identity.ForAdministrator;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import org.springframework.stereotype.Controller;
import org.springframework.ui.ExtendedModelMap;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** A person's account: invitation, roles, disabling, links, lost second factors. */
@Controller
@ForAdministrator
@RequestMapping("/people/{id}/account")
class AccountPages {

    private final AccountAdmin admin;
    private final PersonScreen screen;
    private final Saving saving;

    AccountPages(AccountAdmin admin, PersonScreen screen, Saving saving) {
        this.admin = admin;
        this.screen = screen;
        this.saving = saving;
    }

    @PostMapping
    ModelAndView invite(
            @PathVariable("id") UUID id,
            @Valid @ModelAttribute("accountForm") AccountForm form,
            BindingResult errors,
            Model model) {
        AtomicReference<AccountAdmin.Sent> sent = new AtomicReference<>();
        if (!saving.did(errors, () -> sent.set(admin.invite(id, form)))) {
            return Saving.again(screen.fill(id, model), model);
        }
        return shown(id, Objects.requireNonNull(sent.get()));
    }

    @PostMapping("/edit")
    ModelAndView change(
            @PathVariable("id") UUID id,
            @Valid @ModelAttribute("accountForm") AccountForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        if (!saving.did(errors, () -> admin.change(id, form))) {
            return Saving.again(screen.fill(id, model), model);
        }
        return back(id, Saved.of("identity.saved.accountSaved"), redirect);
    }

    @PostMapping("/link")
    ModelAndView link(@PathVariable UUID id) {
        return shown(id, admin.sendLink(id));
    }

    @PostMapping("/disable")
    ModelAndView disable(@PathVariable UUID id, RedirectAttributes redirect) {
        admin.disable(id);
        return back(id, Saved.of("identity.saved.accountDisabled"), redirect);
    }

    @PostMapping("/enable")
    ModelAndView enable(@PathVariable UUID id, RedirectAttributes redirect) {
        admin.enable(id);
        return back(id, Saved.of("identity.saved.accountEnabled"), redirect);
    }

    @PostMapping("/remove-factors")
    ModelAndView removeFactors(@PathVariable UUID id, RedirectAttributes redirect) {
        admin.removeFactors(id);
        return back(id, Saved.of("identity.saved.factorsRemoved"), redirect);
    }

    /** The link is shown in the answer itself: a redirect would have to keep it in the session's table meanwhile. */
    private ModelAndView shown(UUID id, AccountAdmin.Sent sent) {
        ExtendedModelMap model = new ExtendedModelMap();
        model.addAttribute("sent", sent);
        return new ModelAndView(screen.fill(id, model), model);
    }

    private static ModelAndView back(UUID id, Saved saved, RedirectAttributes redirect) {
        redirect.addFlashAttribute("saved", saved);
        return new ModelAndView("redirect:/people/" + id);
    }
}
