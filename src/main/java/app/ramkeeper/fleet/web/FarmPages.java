package app.ramkeeper.fleet.web;

import app.ramkeeper.fleet.FarmChanges;
import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.SplitSite;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
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

/** A farm is split, and a site that was registered twice becomes one. */
@Controller
@ForOffice
@RequestMapping("/sites/{site}")
class FarmPages {

    /** Which installs become a site of their own. */
    record SplitForm(
            @NotBlank @Size(max = 200) @Nullable String name,
            @NotNull @Nullable LocalDate on,
            @NotEmpty @Nullable Set<UUID> installs) {}

    private final FarmChanges farms;
    private final Fleet fleet;
    private final Saving saving;

    FarmPages(FarmChanges farms, Fleet fleet, Saving saving) {
        this.farms = farms;
        this.fleet = fleet;
        this.saving = saving;
    }

    @GetMapping("/split")
    String split(@PathVariable UUID site, Model model) {
        model.addAttribute("form", new SplitForm(null, null, Set.of()));
        return splitPage(site, model);
    }

    private String splitPage(UUID site, Model model) {
        model.addAttribute("site", fleet.site(new SiteId(site)));
        model.addAttribute("installs", fleet.installsOf(new SiteId(site)));
        return "fleet/site-split";
    }

    @PostMapping("/split")
    ModelAndView parted(
            @PathVariable UUID site,
            @Valid @ModelAttribute("form") SplitForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        SiteId[] made = new SiteId[1];
        if (!saving.did(errors, () -> made[0] = farms.split(command(site, form)))) {
            return Saving.again(splitPage(site, model), model).addObject("form", form);
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.thisPartIsA"));
        return new ModelAndView("redirect:/sites/" + made[0]);
    }

    private static SplitSite command(UUID site, SplitForm form) {
        Set<UUID> installs = Given.need(form.installs(), "Choose the installs.");
        return new SplitSite(
                new SiteId(site),
                Given.need(form.name(), "Give the name."),
                installs.stream().map(InstallId::new).collect(Collectors.toSet()),
                Given.need(form.on(), "Give the day."),
                null);
    }

    @GetMapping("/merge")
    String merge(@PathVariable UUID site, @RequestParam @Nullable String q, Model model) {
        var duplicate = fleet.site(new SiteId(site));
        String sought = q == null ? duplicate.name() : q;
        model.addAttribute("site", duplicate);
        model.addAttribute("q", sought);
        model.addAttribute(
                "found",
                fleet.search(sought, 10).stream()
                        .filter(match -> !match.id().equals(duplicate.id()))
                        .toList());
        return "fleet/site-merge";
    }

    @PostMapping("/merge")
    String merged(@PathVariable UUID site, @RequestParam UUID kept, RedirectAttributes redirect) {
        farms.merge(new SiteId(site), new SiteId(kept));
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.mergedTheOldAddress"));
        return "redirect:/sites/" + kept;
    }
}
