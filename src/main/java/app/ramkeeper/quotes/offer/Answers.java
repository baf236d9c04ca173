package app.ramkeeper.quotes.offer;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.shared.Conflict;
import java.time.Clock;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Records what the customer answered. The hand-over happens in the same transaction. */
@Service
@ForOffice
@Transactional
public class Answers {

    private static final Logger LOG = LoggerFactory.getLogger(Answers.class);

    private final QuoteStore store;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Answers(QuoteStore store, ApplicationEventPublisher events, Clock clock) {
        this.store = store;
        this.events = events;
        this.clock = clock;
    }

    /**
     * Accepts a revision. A second time changes nothing.
     *
     * @param revision the one the customer saw; another one in force by now is a conflict
     */
    public void accept(QuoteId id, int revision, String name, Answered how, @Nullable String note) {
        Revision last = open(id, revision, QuoteState.ACCEPTED);
        if (last.state() == QuoteState.ACCEPTED) {
            return;
        }
        store.decided(last.id(), true, new QuoteStore.Decision(name, how, note));
        store.step(id, revision, Step.Kind.ACCEPTED, name, words(how, note));
        store.enquiry(id, "WON", note);
        events.publishEvent(new QuoteAccepted(id, revision));
        LOG.info("Quote {} revision {} accepted by {}", id, revision, how);
    }

    /** Declines a revision. A second time changes nothing. */
    public void decline(QuoteId id, int revision, String name, Answered how, @Nullable String reason) {
        Revision last = open(id, revision, QuoteState.DECLINED);
        if (last.state() == QuoteState.DECLINED) {
            return;
        }
        store.decided(last.id(), false, new QuoteStore.Decision(name, how, reason));
        store.enquiry(id, "LOST", reason);
        store.step(id, revision, Step.Kind.DECLINED, name, words(how, reason));
    }

    private Revision open(QuoteId id, int revision, QuoteState same) {
        Revision last = store.hold(id);
        Revision answered = last.revision() == revision ? last : store.revision(id, revision);
        if (answered.state() == same) {
            return answered;
        }
        if (answered.state() == QuoteState.REPLACED) {
            throw new Conflict("This revision was replaced by a newer one. Please answer that one.");
        }
        if (answered.state() == QuoteState.DRAFT) {
            throw new Conflict("This revision was not sent yet.");
        }
        if (!answered.isOpenOn(LocalDate.now(clock))) {
            throw new Conflict("This quote is no longer open: it was answered or its time has run out.");
        }
        return answered;
    }

    private static String words(Answered how, @Nullable String note) {
        String by = how.name().toLowerCase(java.util.Locale.ROOT);
        return note == null ? "by " + by : "by " + by + ": " + note;
    }
}
