package app.ramkeeper.quotes.offer;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Gives discounts on drafts. */
@Service
@ForOffice
@Transactional
class Discounts {

    private final QuoteStore store;
    private final DiscountStore discounts;

    Discounts(QuoteStore store, DiscountStore discounts) {
        this.store = store;
        this.discounts = discounts;
    }

    void add(QuoteId id, Discount discount) {
        Revision draft = draft(id);
        discounts.add(draft.id(), draft.discounts().size() + 1, discount);
    }

    void remove(QuoteId id, UUID discount) {
        if (!discounts.remove(draft(id).id(), discount)) {
            throw new Missing("discount", discount);
        }
    }

    /** What the discount would take off the quote as it stands: less than its amount if there is not so much left. */
    @Transactional(readOnly = true)
    BigDecimal taken(QuoteId id, Discount discount) {
        Revision draft = store.latest(id);
        List<Discount> all =
                Stream.concat(draft.discounts().stream(), Stream.of(discount)).toList();
        return Reckoning.totals(draft.lines(), all, draft.taxRounding()).discounts().stream()
                .filter(each -> Objects.equals(each.discount(), discount))
                .map(Reckoning.Taken::amount)
                .findFirst()
                .orElse(BigDecimal.ZERO);
    }

    private Revision draft(QuoteId id) {
        Revision last = store.hold(id);
        if (!last.isDraft()) {
            throw new Conflict("This quote was sent and does not change any more. Revise it first.");
        }
        return last;
    }
}
