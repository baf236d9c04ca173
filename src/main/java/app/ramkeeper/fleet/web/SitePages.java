package app.ramkeeper.fleet.web;

import app.ramkeeper.fleet.CustomerId;
import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.NewParty;
import app.ramkeeper.fleet.Position;
import app.ramkeeper.fleet.SiteCard;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.SitePart;
import app.ramkeeper.fleet.SiteRegister;
import app.ramkeeper.fleet.SourceKind;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
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
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Sites: the list with its forgiving search, the picker of other forms, the page and the form. */
@Controller
@ForField
@RequestMapping("/sites")
class SitePages {

    private static final String FORM = "fleet/site-form";

    private final Fleet fleet;
    private final SiteRegister register;
    private final SiteLists lists;
    private final Words words;
    private final PositionField positions;
    private final Saving saving;

    SitePages(
            Fleet fleet, SiteRegister register, SiteLists lists, Words words, PositionField positions, Saving saving) {
        this.fleet = fleet;
        this.register = register;
        this.lists = lists;
        this.words = words;
        this.positions = positions;
        this.saving = saving;
    }

    @GetMapping
    String list(
            @RequestParam @Nullable String q,
            @RequestParam @Nullable UUID depot,
            @RequestParam @Nullable String after,
            Model model) {
        model.addAttribute("q", q);
        model.addAttribute("depot", depot);
        model.addAttribute("depots", words.depots());
        if (q == null) {
            model.addAttribute("slice", lists.page(depot, after));
        } else {
            model.addAttribute("found", fleet.search(q, 50));
        }
        return "fleet/sites";
    }

    /** The sites found, as a fragment that forms of calls and visits swap in; each is a radio button named "site". */
    @GetMapping("/pick")
    String pick(@RequestParam @Nullable String q, Model model) {
        model.addAttribute("q", q);
        model.addAttribute("found", q == null ? List.of() : fleet.search(q, 8));
        return "fleet/site-pick :: options";
    }

    @GetMapping("/{id}")
    String show(@PathVariable UUID id, Authentication person, Model model) {
        SiteCard site = fleet.site(new SiteId(id));
        if (!site.id().value().equals(id)) {
            return "redirect:/sites/" + site.id();
        }
        model.addAttribute("site", site);
        model.addAttribute("installs", fleet.installsOf(site.id()));
        model.addAttribute("consents", lists.consents(site.id()));
        if (keepsRegister(person)) {
            model.addAttribute("office", true);
            model.addAttribute("notes", register.read(site.id()).details().privateNotes());
            model.addAttribute("parties", lists.parties(site.id()));
        }
        return "fleet/site";
    }

    private static boolean keepsRegister(Authentication person) {
        return person.getAuthorities().stream()
                .anyMatch(a -> "ROLE_OFFICE".equals(a.getAuthority()) || "ROLE_MANAGER".equals(a.getAuthority()));
    }

    @GetMapping("/new")
    @ForOffice
    String blank(@RequestParam @Nullable UUID customer, Model model) {
        model.addAttribute("form", SiteForm.blank(customer));
        return form(model);
    }

    @PostMapping
    @ForOffice
    ModelAndView create(
            @Valid @ModelAttribute("form") SiteForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        SiteId id = new SiteId(form.idOrNew());
        Position position = positions.read(form.position(), Boolean.TRUE.equals(form.positionAsTyped()), errors);
        UUID owner = form.customer();
        List<NewParty> parties =
                owner == null ? List.of() : List.of(NewParty.of(SitePart.OWNER, new CustomerId(owner)));
        if (!saving.did(errors, () -> register.register(id, form.details(position), parties))) {
            return Saving.again(form(model), model).addObject("form", form);
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.siteRegistered"));
        return new ModelAndView("redirect:/sites/" + id);
    }

    @GetMapping("/{id}/edit")
    @ForOffice
    String edit(@PathVariable UUID id, Model model) {
        var present = register.read(new SiteId(id));
        model.addAttribute("id", id);
        model.addAttribute("form", SiteForm.of(present.details(), present.version()));
        return form(model);
    }

    @PostMapping("/{id}/edit")
    @ForOffice
    ModelAndView change(
            @PathVariable("id") UUID site,
            @Valid @ModelAttribute("form") SiteForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        SiteId id = new SiteId(site);
        model.addAttribute("id", site);
        Position position = positions.read(form.position(), Boolean.TRUE.equals(form.positionAsTyped()), errors);
        try {
            if (!saving.did(errors, () -> register.edit(id, form.versionOrFirst(), form.details(position)))) {
                return Saving.again(form(model), model).addObject("form", form);
            }
        } catch (OptimisticLockingFailureException lost) {
            var present = register.read(id);
            return LostUpdate.between(form, SiteForm.of(present.details(), present.version()), "fleet.site.")
                    .page(form(model), model, present.version());
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.siteSaved"));
        return new ModelAndView("redirect:/sites/" + id);
    }

    private String form(Model model) {
        model.addAttribute("catchments", words.catchments());
        model.addAttribute("depots", words.depots());
        model.addAttribute("sources", words.all(SourceKind.class));
        model.addAttribute("waterClasses", words.waterClasses());
        return FORM;
    }
}
