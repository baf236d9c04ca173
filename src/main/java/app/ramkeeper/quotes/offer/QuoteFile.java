package app.ramkeeper.quotes.offer;

import app.ramkeeper.fleet.CustomerId;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.ForOffice;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What the job asks of its quote. */
@Service
@ForOffice
@Transactional
public class QuoteFile {

    private final QuoteStore store;

    QuoteFile(QuoteStore store) {
        this.store = store;
    }

    @Transactional(readOnly = true)
    public QuoteCard card(QuoteId id) {
        return store.card(id);
    }

    /** A revision with its lines. */
    @Transactional(readOnly = true)
    public Revision revision(QuoteId id, int revision) {
        return store.revision(id, revision);
    }

    /** Notes where the quote went on the register. */
    public void handedOver(QuoteId id, int revision, CustomerId customer, SiteId site, String by) {
        store.place(id, customer, site);
        store.step(id, revision, Step.Kind.HANDED_OVER, by, null);
    }
}
