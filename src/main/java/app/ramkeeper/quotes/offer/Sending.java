package app.ramkeeper.quotes.offer;

import app.ramkeeper.identity.Company;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.quotes.price.Prices;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.web.print.Pdf;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Sends a quote: gives it its number, makes its paper once and keeps it. */
@Service
@Transactional
public class Sending {

    private static final Logger LOG = LoggerFactory.getLogger(Sending.class);

    private final QuoteStore store;
    private final Prices prices;
    private final Company company;
    private final Pdf pdf;
    private final Clock clock;

    Sending(QuoteStore store, Prices prices, Company company, Pdf pdf, Clock clock) {
        this.store = store;
        this.prices = prices;
        this.company = company;
        this.pdf = pdf;
        this.clock = clock;
    }

    /**
     * Sends the draft. What was sent before is replaced by it.
     *
     * @throws Conflict if something is missing, in words
     */
    @ForOffice
    public void send(QuoteId id, String by) {
        Revision draft = store.hold(id);
        refuse(draft);
        if (store.card(id).number() == null) {
            LocalDate today = LocalDate.now(clock);
            String prefix = prices.settings().numberPrefix();
            store.number(id, store.nextNumber(prefix == null ? "" : prefix, today.getYear()));
        }
        store.revisions(id).stream()
                .filter(before -> before.state() == QuoteState.SENT)
                .forEach(before -> store.state(before.id(), QuoteState.REPLACED));
        byte[] paper = render(id, draft);
        byte[] hash = sha256(paper);
        store.keepPaper(hash, paper);
        store.sent(draft, by, hash);
        store.step(id, draft.revision(), Step.Kind.SENT, by, null);
        LOG.info("Quote {} revision {} sent", id, draft.revision());
    }

    private void refuse(Revision draft) {
        if (draft.state() == QuoteState.ACCEPTED) {
            throw new Conflict("This quote is accepted. What changes now is a variation of the job.");
        }
        if (!draft.isDraft()) {
            throw new Conflict("Revision " + draft.revision() + " was sent already.");
        }
        if (draft.lines().isEmpty()) {
            throw new Conflict("This quote has no lines yet.");
        }
        List<String> open = draft.lines().stream()
                .filter(line -> line.price() == null)
                .map(QuoteLine::text)
                .toList();
        if (!open.isEmpty()) {
            throw new Conflict("These lines have no price yet: " + String.join("; ", open) + ".");
        }
        if (draft.validUntil().isBefore(LocalDate.now(clock))) {
            throw new Conflict(
                    "The quote would have lapsed before it is sent. Choose a later date until which it holds.");
        }
    }

    /** The paper of a sent revision: the bytes that were kept, never made anew. */
    @ForOffice
    @Transactional(readOnly = true)
    public byte[] paper(QuoteId id, int revision) {
        Revision sent = store.revision(id, revision);
        if (sent.pdfSha256() == null) {
            throw new app.ramkeeper.shared.Missing("paper", revision);
        }
        return store.paper(sent.pdfSha256());
    }

    /** How the draft's paper would look. */
    @ForOffice
    @Transactional(readOnly = true)
    public byte[] preview(QuoteId id) {
        return render(id, store.latest(id));
    }

    /** The office's own sheet of the revision in force: cost, margin, what was accepted of the rules and why. */
    @ForOffice
    @Transactional(readOnly = true)
    public byte[] internal(QuoteId id) {
        Revision revision = store.latest(id);
        return pdf.make("quotes/internal", Map.of("card", store.card(id), "r", revision, "totals", revision.totals()));
    }

    private byte[] render(QuoteId id, Revision revision) {
        CustomerQuote quote = CustomerQuote.of(company.card(), store.card(id), revision, LocalDate.now(clock));
        return pdf.make("quotes/paper", Map.of("quote", quote));
    }

    private static byte[] sha256(byte[] content) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(content);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("Every Java platform has SHA-256", impossible);
        }
    }
}
