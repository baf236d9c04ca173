package app.ramkeeper.quotes.offer;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
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
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Sending a quote, its papers and links, and what the customer answered. */
@Controller
@RequestMapping("/quotes/{id}")
@ForOffice
class SendPages {

    private final Sending sending;
    private final QuoteLinks links;
    private final Answers answers;
    private final QuoteScreen screen;
    private final QuoteStore store;
    private final Saving saving;

    SendPages(Sending sending, QuoteLinks links, Answers answers, QuoteScreen screen, QuoteStore store, Saving saving) {
        this.sending = sending;
        this.links = links;
        this.answers = answers;
        this.screen = screen;
        this.store = store;
        this.saving = saving;
    }

    @PostMapping("/send")
    String send(@PathVariable UUID id, @AuthenticationPrincipal CurrentUser user, RedirectAttributes redirect) {
        sending.send(new QuoteId(id), user.name());
        return link(id, user, redirect);
    }

    @PostMapping("/link")
    String link(@PathVariable UUID id, @AuthenticationPrincipal CurrentUser user, RedirectAttributes redirect) {
        QuoteLinks.Made made = links.make(new QuoteId(id), user.name());
        redirect.addFlashAttribute("address", made.address());
        redirect.addFlashAttribute(
                "saved",
                made.mailedTo() == null
                        ? Saved.of("quotes.saved.theCustomersLinkIs")
                        : Saved.of("quotes.saved.mailedTo", made.mailedTo()));
        return "redirect:/quotes/" + id;
    }

    @PostMapping("/link/revoke")
    String revoke(@PathVariable UUID id, @AuthenticationPrincipal CurrentUser user, RedirectAttributes redirect) {
        links.revoke(new QuoteId(id), user.name());
        redirect.addFlashAttribute("saved", Saved.of("quotes.saved.theLinkNoLonger"));
        return "redirect:/quotes/" + id;
    }

    @GetMapping("/preview.pdf")
    ResponseEntity<byte[]> preview(@PathVariable UUID id) {
        return CustomerQuotePages.download(
                sending.preview(new QuoteId(id)), store.card(new QuoteId(id)).name());
    }

    @GetMapping("/internal.pdf")
    ResponseEntity<byte[]> internal(@PathVariable UUID id) {
        return CustomerQuotePages.download(
                sending.internal(new QuoteId(id)), store.card(new QuoteId(id)).name() + " internal");
    }

    @GetMapping("/revisions/{revision}/quote.pdf")
    ResponseEntity<byte[]> paper(@PathVariable UUID id, @PathVariable int revision) {
        return CustomerQuotePages.download(
                sending.paper(new QuoteId(id), revision),
                store.card(new QuoteId(id)).name());
    }

    @PostMapping("/answer")
    Object answer(
            @PathVariable UUID id,
            @Valid @ModelAttribute("form") AnswerForm form,
            BindingResult result,
            Model model,
            RedirectAttributes redirect) {
        if (!saving.did(result, () -> record(new QuoteId(id), form))) {
            screen.fill(new QuoteId(id), model);
            return Saving.again("quotes/quote", model);
        }
        redirect.addFlashAttribute("saved", Saved.of("quotes.saved.recorded"));
        return "redirect:/quotes/" + id;
    }

    private void record(QuoteId id, AnswerForm form) {
        int revision = Objects.requireNonNull(form.revision());
        String name = Objects.requireNonNull(form.name());
        Answered how = Objects.requireNonNull(form.how());
        if (Boolean.TRUE.equals(form.accepted())) {
            answers.accept(id, revision, name, how, form.note());
        } else {
            answers.decline(id, revision, name, how, form.note());
        }
    }
}
