package app.ramkeeper.identity.people;

import app.ramkeeper.identity.Company;
import app.ramkeeper.identity.ForAdministrator;
import app.ramkeeper.identity.IdentitySettings;
import app.ramkeeper.identity.signin.LinkMail;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import java.time.Clock;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The company's own facts, and what the server was started with. */
@Controller
@ForAdministrator
@RequestMapping("/settings")
class SettingsPages {

    private static final String PAGE = "identity/settings";

    private final Company company;
    private final IdentitySettings settings;
    private final LinkMail mail;
    private final Saving saving;
    private final Clock clock;

    SettingsPages(Company company, IdentitySettings settings, LinkMail mail, Saving saving, Clock clock) {
        this.company = company;
        this.settings = settings;
        this.mail = mail;
        this.saving = saving;
        this.clock = clock;
    }

    @GetMapping
    String show(Model model) {
        model.addAttribute("form", CompanyForm.of(company.card()));
        return page(model);
    }

    @PostMapping
    ModelAndView change(
            @Valid @ModelAttribute("form") CompanyForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        boolean[] written = {false};
        if (!saving.did(errors, () -> written[0] = company.change(form.card()))) {
            return Saving.again(page(model), model);
        }
        if (!written[0]) {
            CompanyForm present = CompanyForm.of(company.card());
            Integer version = present.version();
            return LostUpdate.between(form, present, "identity.company.")
                    .page(page(model), model, version == null ? 0 : version);
        }
        redirect.addFlashAttribute("saved", Saved.of("identity.saved.settingsSaved"));
        return new ModelAndView("redirect:/settings");
    }

    private String page(Model model) {
        model.addAttribute("zone", clock.getZone().getId());
        model.addAttribute("server", settings);
        model.addAttribute("mail", mail.isConfigured());
        return PAGE;
    }
}
