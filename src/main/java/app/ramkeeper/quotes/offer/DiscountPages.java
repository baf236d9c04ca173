package app.ramkeeper.quotes.offer;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.web.Money;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import java.math.BigDecimal;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Discounts on a draft. */
@Controller
@RequestMapping("/quotes/{id}/discounts")
@ForOffice
class DiscountPages {

    private final Discounts discounts;
    private final QuoteScreen screen;
    private final Money money;
    private final Saving saving;

    DiscountPages(Discounts discounts, QuoteScreen screen, Money money, Saving saving) {
        this.discounts = discounts;
        this.screen = screen;
        this.money = money;
        this.saving = saving;
    }

    @PostMapping
    Object add(
            @PathVariable UUID id,
            @Valid @ModelAttribute("less") DiscountForm form,
            BindingResult result,
            Model model,
            RedirectAttributes redirect) {
        QuoteId quote = new QuoteId(id);
        check(quote, form, result);
        if (!saving.did(result, () -> discounts.add(quote, form.discount()))) {
            screen.fill(quote, model);
            return Saving.again("quotes/quote", model);
        }
        redirect.addFlashAttribute("saved", Saved.of("quotes.saved.discountGiven"));
        return "redirect:/quotes/" + id;
    }

    private void check(QuoteId quote, DiscountForm form, BindingResult result) {
        if (result.hasErrors()) {
            return;
        }
        if ((form.percent() == null) == (form.amount() == null)) {
            result.rejectValue(form.percent() == null ? "percent" : "amount", "quotes.discount.one");
            return;
        }
        BigDecimal taken = discounts.taken(quote, form.discount());
        if (form.amount() != null && taken.compareTo(form.amount()) < 0) {
            result.rejectValue("amount", "quotes.discount.more", new Object[] {money.of(taken)}, null);
        }
    }

    @PostMapping("/{discount}/remove")
    String remove(@PathVariable UUID id, @PathVariable UUID discount, RedirectAttributes redirect) {
        discounts.remove(new QuoteId(id), discount);
        redirect.addFlashAttribute("saved", Saved.of("quotes.saved.discountTakenAway"));
        return "redirect:/quotes/" + id;
    }
}
