package app.ramkeeper.fleet.web;

import app.ramkeeper.fleet.CustomerId;
import app.ramkeeper.fleet.FarmChanges;
import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.SellFarm;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.SitePart;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import app.ramkeeper.web.Say;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
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

/** A farm is sold; the search for the buyer keeps what was typed. */
@Controller
@ForOffice
@RequestMapping("/sites/{site}/sell")
class SalePages {

    private static final String VIEW = "fleet/site-sell";
    private static final int FOUND = 10;

    /**
     * Who sells to whom, from which day on.
     *
     * @param sure the day is right though it lies before all that is known of the site
     */
    record SaleForm(
            @Nullable String q,

            @NotNull(message = "{fleet.sell.seller.missing}") @Nullable
            UUID seller,

            @NotNull(message = "{fleet.sell.buyer.missing}") @Nullable
            UUID buyer,

            @NotNull(message = "{fleet.sell.on.missing}") @Nullable
            LocalDate on,

            @NotEmpty(message = "{fleet.sell.parts.missing}") @Nullable
            Set<SitePart> parts,

            @Nullable Boolean sure) {}

    private final FarmChanges farms;
    private final Fleet fleet;
    private final CustomerLists customers;
    private final Words words;
    private final Saving saving;

    SalePages(FarmChanges farms, Fleet fleet, CustomerLists customers, Words words, Saving saving) {
        this.farms = farms;
        this.fleet = fleet;
        this.customers = customers;
        this.words = words;
        this.saving = saving;
    }

    @GetMapping
    String form(@PathVariable UUID site, @RequestParam(required = false) @Nullable String q, Model model) {
        SaleForm form = new SaleForm(q, null, null, null, Set.of(SitePart.values()), null);
        model.addAttribute("form", form);
        return page(site, form, model);
    }

    private String page(UUID site, SaleForm form, Model model) {
        model.addAttribute("site", fleet.site(new SiteId(site)));
        model.addAttribute("found", found(form));
        model.addAttribute("partChoices", words.all(SitePart.class));
        return VIEW;
    }

    /** Customers that the search finds, and the one that was chosen before another search. */
    private List<CustomerLists.Row> found(SaleForm form) {
        List<CustomerLists.Row> found = new ArrayList<>(form.q() == null ? List.of() : customers.find(form.q(), FOUND));
        UUID buyer = form.buyer();
        if (buyer != null && found.stream().noneMatch(match -> match.id().equals(buyer))) {
            customers.byId(buyer).ifPresent(chosen -> found.add(0, chosen));
        }
        return found;
    }

    @PostMapping
    ModelAndView sold(
            @PathVariable UUID site,
            @Valid @ModelAttribute("form") SaleForm form,
            BindingResult errors,
            @RequestParam(required = false) @Nullable String find,
            Model model,
            RedirectAttributes redirect) {
        if (find != null) {
            return Saving.asItStands(page(site, form, model), model, form, errors);
        }
        askAboutEarly(site, form, errors, model);
        if (!saving.did(errors, () -> farms.sell(sale(site, form)))) {
            return Saving.again(page(site, form, model), model).addObject("form", form);
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.theFarmHasIts"));
        return new ModelAndView("redirect:/sites/" + site);
    }

    /** A year typed wrong would rewrite who owned what; a day before all that is known is asked about once. */
    private void askAboutEarly(UUID site, SaleForm form, BindingResult errors, Model model) {
        LocalDate on = form.on();
        if (on == null || Boolean.TRUE.equals(form.sure())) {
            return;
        }
        LocalDate known = farms.knownSince(new SiteId(site));
        if (on.isBefore(known)) {
            model.addAttribute("early", true);
            Object[] days = {Say.day(on), Say.day(known)};
            errors.rejectValue("on", "fleet.sell.early", days, "This day lies before all that is known of the site.");
        }
    }

    private static SellFarm sale(UUID site, SaleForm form) {
        return new SellFarm(
                new SiteId(site),
                new CustomerId(Given.need(form.seller(), "Choose the seller.")),
                new CustomerId(Given.need(form.buyer(), "Choose the buyer.")),
                Given.need(form.on(), "Give the day."),
                Given.need(form.parts(), "Choose the parts."));
    }
}
