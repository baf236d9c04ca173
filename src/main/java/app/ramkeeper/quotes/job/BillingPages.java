package app.ramkeeper.quotes.job;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.quotes.offer.Quotes;
import app.ramkeeper.quotes.price.PricedThing;
import app.ramkeeper.web.CsvDownload;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.method.annotation.StreamingResponseBody;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** What is done and not invoiced, and what went to the books. */
@Controller
@RequestMapping("/billing")
@ForOffice
class BillingPages {

    private static final String CHARGE = "jobs/charge";

    private final Billing billing;
    private final Quotes quotes;
    private final Saving saving;

    BillingPages(Billing billing, Quotes quotes, Saving saving) {
        this.billing = billing;
        this.quotes = quotes;
        this.saving = saving;
    }

    @GetMapping
    String list(Model model) {
        model.addAttribute("ready", billing.ready());
        model.addAttribute("visits", billing.visits());
        model.addAttribute("exports", billing.exports());
        return "jobs/billing";
    }

    @PostMapping("/export")
    String export(@AuthenticationPrincipal CurrentUser user, RedirectAttributes redirect) {
        UUID id = billing.export(user.name());
        redirect.addFlashAttribute("saved", Saved.of("jobs.saved.sentToTheBooks"));
        redirect.addFlashAttribute("fresh", id);
        return "redirect:/billing";
    }

    @GetMapping("/exports/{id}/lines.csv")
    ResponseEntity<StreamingResponseBody> csv(@PathVariable UUID id) {
        List<? extends List<?>> rows = billing.table(id);
        return CsvDownload.of("billing-" + id.toString().substring(24) + ".csv", Billing.HEADER, rows.stream());
    }

    @GetMapping("/visits/{id}")
    String visit(@PathVariable UUID id, Model model) {
        Billing.Visit visit = billing.visit(id);
        model.addAttribute(
                "form",
                new ChargeForm(
                        (visit.kind().equals("SERVICE") ? "Service" : "Call-out") + " at " + visit.site() + " on "
                                + visit.doneOn(),
                        null,
                        null,
                        null));
        return page(visit, model);
    }

    private String page(Billing.Visit visit, Model model) {
        model.addAttribute("visit", visit);
        model.addAttribute("taxes", JobPages.taxes(quotes.taxes()));
        return CHARGE;
    }

    @PostMapping("/visits/{id}")
    Object charge(
            @PathVariable UUID id,
            @Valid @ModelAttribute("form") ChargeForm form,
            BindingResult result,
            Model model,
            RedirectAttributes redirect) {
        Billing.Visit visit = billing.visit(id);
        form.check(result);
        PricedThing tax = quotes.taxes().stream()
                .filter(each -> each.id().equals(form.tax()))
                .findFirst()
                .orElse(null);
        if (tax == null && !result.hasFieldErrors("tax")) {
            result.rejectValue("tax", "jobs.tax.missing");
        }
        if (!saving.did(result, () -> billing.charge(id, form, Objects.requireNonNull(tax)))) {
            return Saving.again(page(visit, model), model);
        }
        redirect.addFlashAttribute("saved", Saved.of("jobs.saved.recorded", form.text()));
        return "redirect:/billing";
    }
}
