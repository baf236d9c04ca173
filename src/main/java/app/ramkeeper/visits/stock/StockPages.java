package app.ramkeeper.visits.stock;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.visits.VisitChoices;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.validation.ObjectError;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** What lies where, the ledger behind it, the steps by hand, and the recall of a batch. */
@Controller
@ForOffice
@RequestMapping("/stock")
class StockPages {

    private static final String STEP = "/{step:receive|move|count|scrap}";
    private static final String FORM = "visits/stock-form";
    private static final int LONGEST = 100;

    private final Stock stock;
    private final StockQueries queries;
    private final VisitChoices choices;
    private final Saving saving;

    StockPages(Stock stock, StockQueries queries, VisitChoices choices, Saving saving) {
        this.stock = stock;
        this.queries = queries;
        this.choices = choices;
        this.saving = saving;
    }

    @GetMapping
    String onHand(
            @RequestParam(required = false) @Nullable UUID place,
            @RequestParam(required = false) @Nullable String q,
            @RequestParam(required = false) @Nullable String after,
            Model model) {
        model.addAttribute("slice", queries.onHand(place, cut(q), after));
        model.addAttribute("places", choices.places());
        model.addAttribute("place", place);
        model.addAttribute("q", q);
        return "visits/stock";
    }

    @GetMapping("/movements")
    String movements(
            @RequestParam(required = false) @Nullable UUID place,
            @RequestParam(required = false) @Nullable UUID part,
            @RequestParam(required = false) @Nullable String after,
            Model model) {
        model.addAttribute("slice", queries.movements(place, part, after));
        model.addAttribute("places", choices.places());
        model.addAttribute("parts", choices.parts());
        model.addAttribute("place", place);
        model.addAttribute("part", part);
        return "visits/stock-movements";
    }

    @GetMapping("/recall")
    String recall(@RequestParam(required = false) @Nullable String batch, Model model) {
        String asked = cut(batch);
        model.addAttribute("batch", asked);
        model.addAttribute("fitted", asked == null ? List.of() : queries.fitted(asked));
        model.addAttribute("inStock", asked == null ? List.of() : queries.inStock(asked));
        return "visits/stock-recall";
    }

    @GetMapping(STEP)
    String step(
            @PathVariable String step,
            @RequestParam(required = false) @Nullable UUID part,
            @RequestParam(required = false) @Nullable UUID place,
            @RequestParam(required = false) @Nullable String batch,
            Model model) {
        model.addAttribute("form", StockForm.blank(part, place, cut(batch)));
        fill(model, StockStep.of(step));
        return FORM;
    }

    @PostMapping(STEP)
    ModelAndView take(
            @PathVariable String step,
            @Valid @ModelAttribute("form") StockForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes flash,
            @AuthenticationPrincipal CurrentUser user) {
        StockStep kind = StockStep.of(step);
        check(kind, form, errors);
        try {
            if (!saving.did(errors, () -> stock.take(kind, form, new PersonId(user.person())))) {
                fill(model, kind);
                boolean conflict = errors.getGlobalErrors().stream().anyMatch(StockPages::isConflict);
                HttpStatus status = conflict ? HttpStatus.CONFLICT : HttpStatus.UNPROCESSABLE_CONTENT;
                return new ModelAndView(FORM, model.asMap(), status).addObject("form", form);
            }
        } catch (DuplicateKeyException twice) {
            // The same form was committed by another request a moment before: once is what was meant.
            flash.addFlashAttribute("saved", Saved.of("stock.saved.itWasInThe"));
            return new ModelAndView("redirect:/stock");
        }
        flash.addFlashAttribute("saved", Saved.of("stock.saved.inTheLedger"));
        return new ModelAndView("redirect:/stock?place=" + form.place());
    }

    private static boolean isConflict(ObjectError error) {
        return "conflict".equals(error.getCode()) || "ck_stock_levels_quantity".equals(error.getCode());
    }

    private static void check(StockStep step, StockForm form, BindingResult errors) {
        if (step == StockStep.MOVE && form.to() == null) {
            errors.rejectValue("to", "stock.noTo", "Choose where it goes.");
        }
        if (step == StockStep.MOVE && form.to() != null && form.to().equals(form.place())) {
            errors.rejectValue("to", "stock.same", "It lies there already. Choose another place.");
        }
        if (step != StockStep.COUNT
                && form.quantity() != null
                && form.quantity().signum() == 0) {
            errors.rejectValue("quantity", "stock.none", "Give how many.");
        }
    }

    private void fill(Model model, StockStep step) {
        model.addAttribute("step", step);
        model.addAttribute("parts", choices.parts());
        model.addAttribute("places", choices.places());
    }

    private static @Nullable String cut(@Nullable String text) {
        return text == null || text.isBlank() ? null : text.substring(0, Math.min(LONGEST, text.length()));
    }
}
