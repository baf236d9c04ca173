package app.ramkeeper.quotes.price;

import app.ramkeeper.identity.ForSetup;
import app.ramkeeper.web.Choice;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
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

/** Pages of the priced things. */
@Controller
@RequestMapping("/prices")
@ForSetup
class PricePages {

    private static final String PAGE = "prices/thing";

    private final PriceBook book;
    private final Saving saving;
    private final MessageSource messages;
    private final Clock clock;

    PricePages(PriceBook book, Saving saving, MessageSource messages, Clock clock) {
        this.book = book;
        this.saving = saving;
        this.messages = messages;
        this.clock = clock;
    }

    @GetMapping
    String list(
            @RequestParam(required = false) @Nullable LocalDate on,
            @RequestParam(required = false) @Nullable PriceKind kind,
            Model model) {
        LocalDate day = on == null ? LocalDate.now(clock) : on;
        model.addAttribute("on", day);
        model.addAttribute("kind", kind);
        model.addAttribute("kinds", choices("prices.kind.", PriceKind.values()));
        model.addAttribute("things", book.list(day, kind));
        return "prices/list";
    }

    @GetMapping("/new")
    String blank(@RequestParam(required = false) @Nullable PriceKind kind, Model model) {
        if (kind == null) {
            model.addAttribute("kinds", PriceKind.values());
            return "prices/new";
        }
        return page(model, null, ThingForm.blank(kind));
    }

    @PostMapping("/new")
    Object add(
            @Valid @ModelAttribute("form") ThingForm form,
            BindingResult result,
            Model model,
            RedirectAttributes redirect) {
        form.check(result);
        UUID[] id = new UUID[1];
        if (!saving.did(result, () -> id[0] = book.add(form))) {
            choices(model);
            return Saving.again(PAGE, model);
        }
        redirect.addFlashAttribute("saved", Saved.of("prices.saved.addedNowGiveIt", form.code(), form.name()));
        return "redirect:/prices/" + id[0];
    }

    @GetMapping("/{id}")
    String edit(@PathVariable UUID id, Model model) {
        return page(model, id, book.form(id));
    }

    @PostMapping("/{id}")
    Object save(
            @PathVariable UUID id,
            @Valid @ModelAttribute("form") ThingForm form,
            BindingResult result,
            Model model,
            RedirectAttributes redirect) {
        ThingForm saved = book.form(id);
        form.check(result);
        if (form.kind() != null && saved.kind() != form.kind()) {
            result.rejectValue("kind", "prices.kind.fixed");
        }
        if (!result.hasErrors() && !Objects.equals(saved.version(), form.version())) {
            model.addAttribute("lost", LostUpdate.between(form, saved, "prices."));
            page(model, id, form.withVersion(saved.version()));
            return new ModelAndView(PAGE, model.asMap(), HttpStatus.CONFLICT);
        }
        if (!saving.did(result, () -> book.change(id, form))) {
            around(model, id);
            return Saving.again(PAGE, model);
        }
        redirect.addFlashAttribute("saved", Saved.of("prices.saved.saved", form.code(), form.name()));
        return "redirect:/prices/" + id;
    }

    @PostMapping("/{id}/periods")
    Object addPeriod(
            @PathVariable UUID id,
            @Valid @ModelAttribute("period") PeriodForm period,
            BindingResult result,
            Model model,
            RedirectAttributes redirect) {
        ThingForm thing = book.form(id);
        period.check(result);
        if (!saving.did(result, () -> book.addPeriod(id, period))) {
            model.addAttribute("form", thing);
            around(model, id);
            return Saving.again(PAGE, model);
        }
        redirect.addFlashAttribute("saved", Saved.of("prices.saved.priceAdded"));
        return "redirect:/prices/" + id;
    }

    @PostMapping("/{id}/periods/{period}/remove")
    String removePeriod(@PathVariable UUID id, @PathVariable UUID period, RedirectAttributes redirect) {
        book.removePeriod(id, period);
        redirect.addFlashAttribute("saved", Saved.of("prices.saved.priceTakenAway"));
        return "redirect:/prices/" + id;
    }

    @PostMapping("/{id}/withdraw")
    String withdraw(@PathVariable UUID id, RedirectAttributes redirect) {
        book.withdraw(id, true);
        redirect.addFlashAttribute("saved", Saved.of("prices.saved.takenOutOfUse"));
        return "redirect:/prices/" + id;
    }

    @PostMapping("/{id}/bring-back")
    String bringBack(@PathVariable UUID id, RedirectAttributes redirect) {
        book.withdraw(id, false);
        redirect.addFlashAttribute("saved", Saved.of("prices.saved.inUseAgain"));
        return "redirect:/prices/" + id;
    }

    private String page(Model model, @Nullable UUID id, ThingForm form) {
        model.asMap().remove(BindingResult.MODEL_KEY_PREFIX + "form");
        model.addAttribute("form", form);
        if (id == null) {
            choices(model);
        } else {
            around(model, id);
        }
        return PAGE;
    }

    private void around(Model model, UUID id) {
        choices(model);
        model.addAttribute("id", id);
        model.addAttribute("withdrawn", book.isWithdrawn(id));
        model.addAttribute("periods", book.periods(id));
        if (!model.containsAttribute("period")) {
            model.addAttribute("period", new PeriodForm(LocalDate.now(clock), null, null, null));
        }
    }

    private void choices(Model model) {
        model.addAttribute("models", book.models());
        model.addAttribute("uses", choices("prices.use.", PipeUse.values()));
        model.addAttribute("materials", choices("prices.material.", app.ramkeeper.sizing.pipe.PipeMaterial.values()));
    }

    private List<Choice> choices(String prefix, Enum<?>[] values) {
        return Arrays.stream(values)
                .map(value ->
                        new Choice(value.name(), messages.getMessage(prefix + value.name(), null, java.util.Locale.UK)))
                .toList();
    }
}
