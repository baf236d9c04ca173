package app.ramkeeper.quotes.offer;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.web.Choice;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.ui.Model;

/** What the office's page of a quote shows. */
@Component
@ForOffice
@Transactional(readOnly = true)
class QuoteScreen {

    private final QuoteStore store;
    private final QuoteLinks links;
    private final MessageSource messages;
    private final Clock clock;

    QuoteScreen(QuoteStore store, QuoteLinks links, MessageSource messages, Clock clock) {
        this.store = store;
        this.links = links;
        this.messages = messages;
        this.clock = clock;
    }

    private List<Choice> groups(Revision revision) {
        return revision.groups().stream()
                .map(group -> new Choice(group.name(), messages.getMessage("quotes.group." + group, null, Locale.UK)))
                .toList();
    }

    void fill(QuoteId id, Model model) {
        Revision revision = store.latest(id);
        model.addAttribute("card", store.card(id));
        model.addAttribute("r", revision);
        model.addAttribute("totals", revision.totals());
        model.addAttribute("open", revision.isOpenOn(LocalDate.now(clock)));
        model.addAttribute("revisions", store.revisions(id));
        model.addAttribute("steps", store.steps(id));
        model.addAttribute("discountOn", groups(revision));
        if (!model.containsAttribute("less")) {
            model.addAttribute("less", new DiscountForm(null, null, null, null));
        }
        model.addAttribute("link", links.expiry(id).orElse(null));
        model.addAttribute(
                "noTravel",
                revision.isDraft()
                        && revision.design() != null
                        && revision.of(LineGroup.TRAVEL).isEmpty());
        model.addAttribute(
                "unpriced",
                revision.lines().stream().filter(line -> line.price() == null).count());
        if (!model.containsAttribute("form")) {
            model.addAttribute(
                    "form",
                    new AnswerForm(revision.revision(), null, store.card(id).customerName(), null, null));
        }
    }
}
