package app.ramkeeper.fleet.web;

import app.ramkeeper.fleet.AccessWindow;
import app.ramkeeper.fleet.ClosedPeriod;
import app.ramkeeper.fleet.ContactDetails;
import app.ramkeeper.fleet.CustomerId;
import app.ramkeeper.fleet.CustomerRegister;
import app.ramkeeper.fleet.HazardKind;
import app.ramkeeper.fleet.NewParty;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.SiteNote;
import app.ramkeeper.fleet.SitePart;
import app.ramkeeper.fleet.SiteRegister;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Positive;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.UUID;
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

/** What is noted round a site: hazards, hours, closed days, and who plays which part. */
@Controller
@ForOffice
@RequestMapping("/sites/{site}")
class SiteAroundPages {

    /** A note of one of three kinds; the fields of the other two stay empty. */
    record NoteForm(
            @Nullable UUID id,
            @Nullable HazardKind hazard,
            @Size(max = 1000) @Nullable String text,
            @Min(1) @Max(7) @Nullable Integer weekday,
            @Nullable LocalTime fromTime,
            @Nullable LocalTime untilTime,
            @Nullable LocalDate fromDate,
            @Nullable LocalDate untilDate) {}

    /** Somebody takes a part: a customer by id, or a new person outside the company by name. */
    record PartyForm(
            @Nullable UUID id,
            @NotNull @Nullable SitePart part,
            @Nullable UUID customer,
            @NotBlank @Size(max = 200) @Nullable String who,
            @Size(max = 60) @Nullable String phone,
            @Nullable LocalDate from,
            @Positive @DecimalMax("100") @Nullable BigDecimal share) {}

    private final SiteRegister register;
    private final CustomerRegister customers;
    private final CustomerLists customerLists;
    private final SiteLists lists;
    private final Words words;
    private final Saving saving;

    SiteAroundPages(
            SiteRegister register,
            CustomerRegister customers,
            CustomerLists customerLists,
            SiteLists lists,
            Words words,
            Saving saving) {
        this.register = register;
        this.customers = customers;
        this.customerLists = customerLists;
        this.lists = lists;
        this.words = words;
        this.saving = saving;
    }

    @GetMapping("/access")
    String access(@PathVariable UUID site, Model model) {
        model.addAttribute("form", new NoteForm(Uuids.next(), null, null, null, null, null, null, null));
        return accessPage(site, model);
    }

    private String accessPage(UUID site, Model model) {
        SiteId id = new SiteId(site);
        model.addAttribute("id", site);
        model.addAttribute("site", register.read(id).details());
        model.addAttribute("hazards", lists.hazards(id));
        model.addAttribute("windows", lists.windows(id));
        model.addAttribute("closedPeriods", lists.closedPeriods(id));
        model.addAttribute("kinds", words.all(HazardKind.class));
        return "fleet/site-access";
    }

    @PostMapping("/access/{kind}")
    ModelAndView add(
            @PathVariable UUID site,
            @PathVariable SiteNote kind,
            @Valid @ModelAttribute("form") NoteForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        UUID row = form.id() == null ? Uuids.next() : form.id();
        SiteId id = new SiteId(site);
        if (!saving.did(errors, () -> keep(row, id, kind, form))) {
            return Saving.again(accessPage(site, model), model).addObject("form", form);
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.noted"));
        return new ModelAndView("redirect:/sites/" + site + "/access");
    }

    private void keep(UUID row, SiteId site, SiteNote kind, NoteForm form) {
        switch (kind) {
            case HAZARD ->
                register.addHazard(row, site, Given.need(form.hazard(), "Choose what can hurt someone."), form.text());
            case WINDOW -> {
                String sentence = "Give the weekday and both times.";
                register.addWindow(
                        row,
                        site,
                        new AccessWindow(
                                Given.need(form.weekday(), sentence),
                                Given.need(form.fromTime(), sentence),
                                Given.need(form.untilTime(), sentence)));
            }
            case CLOSED -> {
                String sentence = "Give the first and the last closed day.";
                register.addClosedPeriod(
                        row,
                        site,
                        new ClosedPeriod(
                                Given.need(form.fromDate(), sentence),
                                Given.need(form.untilDate(), sentence),
                                form.text()));
            }
        }
    }

    @PostMapping("/access/{kind}/{row}/remove")
    String remove(
            @PathVariable UUID site, @PathVariable SiteNote kind, @PathVariable UUID row, RedirectAttributes redirect) {
        register.remove(new SiteId(site), kind, row);
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.struckOut"));
        return "redirect:/sites/" + site + "/access";
    }

    @GetMapping("/parties")
    String parties(@PathVariable UUID site, Model model) {
        model.addAttribute("form", new PartyForm(Uuids.next(), null, null, null, null, null, null));
        return partiesPage(site, model);
    }

    private String partiesPage(UUID site, Model model) {
        SiteId id = new SiteId(site);
        model.addAttribute("id", site);
        model.addAttribute("site", register.read(id).details());
        model.addAttribute("parties", lists.parties(id));
        model.addAttribute("partChoices", words.all(SitePart.class));
        return "fleet/site-parties";
    }

    /** A name that customers of the register resemble is asked about first: one of those, or somebody new. */
    @PostMapping("/parties")
    ModelAndView addParty(
            @PathVariable UUID site,
            @Valid @ModelAttribute("form") PartyForm form,
            BindingResult errors,
            @RequestParam(defaultValue = "false") boolean asNew,
            Model model,
            RedirectAttributes redirect) {
        if (!errors.hasErrors() && form.customer() == null && !asNew) {
            var found = customerLists.find(String.valueOf(form.who()), 6);
            if (!found.isEmpty()) {
                model.addAttribute("candidates", found);
                errors.rejectValue("who", "which", "Choose whom you mean, or say that it is somebody else.");
            }
        }
        if (!saving.did(errors, () -> keepParty(site, form))) {
            return Saving.again(partiesPage(site, model), model).addObject("form", form);
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.noted"));
        return new ModelAndView("redirect:/sites/" + site + "/parties");
    }

    private void keepParty(UUID site, PartyForm form) {
        UUID row = form.id() == null ? Uuids.next() : form.id();
        SitePart part = Given.need(form.part(), "Choose the part.");
        UUID customer = form.customer();
        NewParty party = customer == null
                ? new NewParty(
                        part,
                        null,
                        customers.register(new ContactDetails(String.valueOf(form.who()), form.phone(), null, null)),
                        form.from(),
                        form.share())
                : new NewParty(part, new CustomerId(customer), null, form.from(), form.share());
        register.addParty(row, new SiteId(site), party);
    }

    @PostMapping("/parties/{row}/end")
    String end(
            @PathVariable UUID site,
            @PathVariable UUID row,
            @RequestParam LocalDate until,
            RedirectAttributes redirect) {
        register.endParty(new SiteId(site), row, until);
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.ended"));
        return "redirect:/sites/" + site + "/parties";
    }
}
