package app.ramkeeper.quotes.offer;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.quotes.price.PriceKind;
import app.ramkeeper.quotes.price.Prices;
import app.ramkeeper.web.Choice;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Money;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.http.HttpStatus;
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

/** Lines of a draft. */
@Controller
@RequestMapping("/quotes/{id}/lines")
@ForOffice
class LinePages {

    private static final String PAGE = "quotes/line";

    private final Quotes quotes;
    private final Prices prices;
    private final Money money;
    private final Saving saving;
    private final MessageSource messages;
    private final Clock clock;

    LinePages(Quotes quotes, Prices prices, Money money, Saving saving, MessageSource messages, Clock clock) {
        this.quotes = quotes;
        this.prices = prices;
        this.money = money;
        this.saving = saving;
        this.messages = messages;
        this.clock = clock;
    }

    @ModelAttribute("groups")
    List<Choice> groups() {
        return Arrays.stream(LineGroup.values())
                .map(group -> new Choice(group.name(), messages.getMessage("quotes.group." + group, null, Locale.UK)))
                .toList();
    }

    @ModelAttribute("taxes")
    List<Choice> taxes() {
        return quotes.taxes().stream()
                .map(tax -> new Choice(
                        tax.id().toString(),
                        tax.name() + " " + tax.price().stripTrailingZeros().toPlainString() + " %"))
                .toList();
    }

    @GetMapping("/new")
    String blank(@PathVariable UUID id, @RequestParam(required = false) @Nullable UUID thing, Model model) {
        quotes.head(new QuoteId(id));
        model.addAttribute("id", id);
        model.addAttribute("form", quotes.blank(thing));
        model.addAttribute("things", things());
        return PAGE;
    }

    private List<Choice> things() {
        LocalDate today = LocalDate.now(clock);
        return Arrays.stream(PriceKind.values())
                .filter(kind -> kind != PriceKind.TAX)
                .flatMap(kind -> prices.of(kind, today).stream())
                .map(thing -> new Choice(
                        thing.id().toString(), thing.name() + ", " + money.plain(thing.price()) + " / " + thing.unit()))
                .toList();
    }

    @PostMapping
    Object add(
            @PathVariable UUID id,
            @Valid @ModelAttribute("form") LineForm form,
            BindingResult result,
            Model model,
            RedirectAttributes redirect) {
        model.addAttribute("id", id);
        if (!saving.did(result, () -> quotes.addLine(new QuoteId(id), form))) {
            model.addAttribute("things", things());
            return Saving.again(PAGE, model);
        }
        redirect.addFlashAttribute("saved", Saved.of("quotes.saved.lineAdded", form.text()));
        return "redirect:/quotes/" + id;
    }

    @GetMapping("/{line}")
    String edit(@PathVariable UUID id, @PathVariable UUID line, Model model) {
        model.addAttribute("id", id);
        model.addAttribute("line", line);
        model.addAttribute("form", quotes.form(new QuoteId(id), line));
        return PAGE;
    }

    @PostMapping("/{line}")
    Object change(
            @PathVariable UUID id,
            @PathVariable UUID line,
            @Valid @ModelAttribute("form") LineForm form,
            BindingResult result,
            Model model,
            RedirectAttributes redirect) {
        LineForm saved = quotes.form(new QuoteId(id), line);
        model.addAttribute("id", id);
        model.addAttribute("line", line);
        if (!result.hasErrors() && !Objects.equals(saved.version(), form.version())) {
            model.addAttribute("lost", LostUpdate.between(form, saved, "quotes.line."));
            model.addAttribute("version", saved.version());
            return new ModelAndView(PAGE, model.asMap(), HttpStatus.CONFLICT);
        }
        if (!saving.did(result, () -> quotes.changeLine(new QuoteId(id), line, form))) {
            return Saving.again(PAGE, model);
        }
        redirect.addFlashAttribute("saved", Saved.of("quotes.saved.saved", form.text()));
        return "redirect:/quotes/" + id;
    }

    @PostMapping("/{line}/remove")
    String remove(@PathVariable UUID id, @PathVariable UUID line, RedirectAttributes redirect) {
        quotes.removeLine(new QuoteId(id), line);
        redirect.addFlashAttribute("saved", Saved.of("quotes.saved.lineRemoved"));
        return "redirect:/quotes/" + id;
    }
}
