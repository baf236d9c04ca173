package app.ramkeeper.quotes.offer;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.quotes.design.ChosenDesigns;
import app.ramkeeper.quotes.design.DesignId;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
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

/** The list of quotes, and making and changing drafts. */
@Controller
@RequestMapping("/quotes")
@ForOffice
class QuotePages {

    private static final String HEAD = "quotes/head";

    private final Quotes quotes;
    private final QuoteList list;
    private final QuoteScreen screen;
    private final ObjectProvider<ChosenDesigns> designs;
    private final Saving saving;

    QuotePages(
            Quotes quotes, QuoteList list, QuoteScreen screen, ObjectProvider<ChosenDesigns> designs, Saving saving) {
        this.quotes = quotes;
        this.list = list;
        this.screen = screen;
        this.designs = designs;
        this.saving = saving;
    }

    @GetMapping
    String list(
            @RequestParam(required = false) @Nullable QuoteState state,
            @RequestParam(required = false) @Nullable String words,
            @RequestParam(required = false) @Nullable String after,
            Model model) {
        model.addAttribute("state", state);
        model.addAttribute("words", words);
        model.addAttribute("states", QuoteState.values());
        model.addAttribute("counts", list.counts());
        model.addAttribute("waiting", list.waiting());
        model.addAttribute("reasons", list.reasons());
        model.addAttribute("page", list.page(state, words, after));
        return "quotes/list";
    }

    @GetMapping("/new")
    String blank(Model model) {
        model.addAttribute("form", quotes.blank());
        return HEAD;
    }

    @PostMapping
    Object add(
            @Valid @ModelAttribute("form") HeadForm form,
            BindingResult result,
            Model model,
            @AuthenticationPrincipal CurrentUser user) {
        QuoteId[] id = new QuoteId[1];
        return saving.did(result, () -> id[0] = quotes.open(form, user.name()))
                ? "redirect:/quotes/" + id[0]
                : Saving.again(HEAD, model);
    }

    /** Makes a quote of a design that was chosen. */
    @PostMapping("/from-design")
    String fromDesign(@RequestParam UUID design, @AuthenticationPrincipal CurrentUser user) {
        ChosenDesigns known = designs.getIfAvailable();
        if (known == null) {
            throw new Missing("design", design);
        }
        return "redirect:/quotes/" + quotes.fromDesign(known.find(new DesignId(design)), user.name());
    }

    @GetMapping("/{id}")
    String show(@PathVariable UUID id, Model model) {
        screen.fill(new QuoteId(id), model);
        return "quotes/quote";
    }

    @GetMapping("/{id}/edit")
    String edit(@PathVariable UUID id, Model model) {
        model.addAttribute("id", id);
        model.addAttribute("form", quotes.head(new QuoteId(id)));
        return HEAD;
    }

    @PostMapping("/{id}/edit")
    Object change(
            @PathVariable UUID id,
            @Valid @ModelAttribute("form") HeadForm form,
            BindingResult result,
            Model model,
            RedirectAttributes redirect) {
        HeadForm saved = quotes.head(new QuoteId(id));
        model.addAttribute("id", id);
        if (!result.hasErrors()
                && !(Objects.equals(saved.version(), form.version())
                        && Objects.equals(saved.draftVersion(), form.draftVersion()))) {
            model.addAttribute("lost", LostUpdate.between(form, saved, "quotes.head."));
            model.asMap().remove(BindingResult.MODEL_KEY_PREFIX + "form");
            model.addAttribute("form", form.withVersions(saved));
            return new ModelAndView(HEAD, model.asMap(), HttpStatus.CONFLICT);
        }
        if (!saving.did(result, () -> quotes.change(new QuoteId(id), form))) {
            return Saving.again(HEAD, model);
        }
        redirect.addFlashAttribute("saved", Saved.of("quotes.saved.savedNow"));
        return "redirect:/quotes/" + id;
    }

    @PostMapping("/{id}/revise")
    String revise(@PathVariable UUID id, @AuthenticationPrincipal CurrentUser user, RedirectAttributes redirect) {
        quotes.revise(new QuoteId(id), user.name());
        redirect.addFlashAttribute("saved", Saved.of("quotes.saved.aNewDraftWhat"));
        return "redirect:/quotes/" + id;
    }
}
