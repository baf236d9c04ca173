package app.ramkeeper.fleet.web;

import app.ramkeeper.catalogue.PumpModelId;
import app.ramkeeper.fleet.ConfigurationDetails;
import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.InstallRegister;
import app.ramkeeper.fleet.PumpDetails;
import app.ramkeeper.fleet.RegisterInstall;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import app.ramkeeper.web.Say;
import jakarta.validation.Valid;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.security.core.Authentication;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Installs: the page, the form, and a new one with its first configuration and pump. */
@Controller
@ForField
class InstallPages {

    private static final String NEW = "fleet/install-new";
    private static final String FORM = "fleet/install-form";

    /** The pump that stands there first. */
    record PumpForm(
            @Size(max = 60) @Nullable String serial,
            @Nullable UUID model) {}

    private final Fleet fleet;
    private final InstallRegister register;
    private final InstallLists lists;
    private final Words words;
    private final Saving saving;
    private final Say say;

    InstallPages(Fleet fleet, InstallRegister register, InstallLists lists, Words words, Saving saving, Say say) {
        this.fleet = fleet;
        this.register = register;
        this.lists = lists;
        this.words = words;
        this.saving = saving;
        this.say = say;
    }

    @GetMapping("/installs/{id}")
    String show(@PathVariable UUID id, Authentication person, Model model) {
        InstallId install = new InstallId(id);
        model.addAttribute("install", fleet.install(install));
        model.addAttribute("configurations", fleet.configurations(install));
        model.addAttribute("periods", fleet.runningPeriods(install));
        model.addAttribute("components", lists.components(install));
        model.addAttribute("elements", lists.elements(install));
        model.addAttribute("fittings", lists.fittingsOfInstall(id));
        model.addAttribute(
                "office",
                person.getAuthorities().stream()
                        .anyMatch(a ->
                                "ROLE_OFFICE".equals(a.getAuthority()) || "ROLE_MANAGER".equals(a.getAuthority())));
        return "fleet/install";
    }

    @GetMapping("/sites/{site}/installs/new")
    @ForOffice
    String blank(@PathVariable UUID site, Model model) {
        model.addAttribute("form", InstallForm.blank());
        model.addAttribute("layout", ConfigurationForm.of(ConfigurationDetails.unknown(), null, null));
        model.addAttribute("pump", new PumpForm(null, null));
        return newPage(site, model);
    }

    private String newPage(UUID site, Model model) {
        model.addAttribute("site", fleet.site(new SiteId(site)));
        model.addAttribute("models", words.models());
        return NEW;
    }

    @PostMapping("/sites/{site}/installs")
    @ForOffice
    ModelAndView create(
            @PathVariable UUID site,
            @Valid @ModelAttribute("form") InstallForm form,
            BindingResult errors,
            @Valid @ModelAttribute("layout") ConfigurationForm layout,
            BindingResult layoutErrors,
            @Valid @ModelAttribute("pump") PumpForm pump,
            BindingResult pumpErrors,
            Model model,
            RedirectAttributes redirect) {
        InstallId id = new InstallId(form.idOrNew());
        if (layoutErrors.hasErrors() || pumpErrors.hasErrors()) {
            errors.reject("parts", "Something below cannot be read; see the marked fields.");
        }
        if (!saving.did(errors, () -> register.register(id, command(site, form, layout, pump)))) {
            return Saving.again(newPage(site, model), model)
                    .addObject("form", form)
                    .addObject("layout", layout)
                    .addObject("pump", pump);
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.installRegistered"));
        return new ModelAndView("redirect:/installs/" + id);
    }

    private RegisterInstall command(UUID site, InstallForm form, ConfigurationForm layout, PumpForm pump) {
        LocalDate day = form.commissionedOn() == null ? say.today() : form.commissionedOn();
        UUID model = pump.model();
        boolean pumpKnown = model != null || pump.serial() != null;
        List<PumpDetails> pumps = pumpKnown
                ? List.of(PumpDetails.of(pump.serial(), model == null ? null : new PumpModelId(model)))
                : List.of();
        return new RegisterInstall(new SiteId(site), form.details(), layout.details(), layout.baseline(day), pumps);
    }

    @GetMapping("/installs/{id}/edit")
    @ForOffice
    String edit(@PathVariable UUID id, Model model) {
        var present = register.read(new InstallId(id));
        model.addAttribute("id", id);
        model.addAttribute("form", InstallForm.of(present.details(), present.version()));
        return FORM;
    }

    @PostMapping("/installs/{id}/edit")
    @ForOffice
    ModelAndView change(
            @PathVariable("id") UUID install,
            @Valid @ModelAttribute("form") InstallForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        InstallId id = new InstallId(install);
        model.addAttribute("id", install);
        try {
            if (!saving.did(errors, () -> register.edit(id, form.versionOrFirst(), form.details()))) {
                return Saving.again(FORM, model).addObject("form", form);
            }
        } catch (OptimisticLockingFailureException lost) {
            var present = register.read(id);
            return LostUpdate.between(form, InstallForm.of(present.details(), present.version()), "fleet.install.")
                    .page(FORM, model, present.version());
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.installSaved"));
        return new ModelAndView("redirect:/installs/" + id);
    }
}
