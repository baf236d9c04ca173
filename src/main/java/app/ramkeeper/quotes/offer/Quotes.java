package app.ramkeeper.quotes.offer;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.quotes.design.ChosenDesign;
import app.ramkeeper.quotes.price.PriceKind;
import app.ramkeeper.quotes.price.PricedThing;
import app.ramkeeper.quotes.price.Prices;
import app.ramkeeper.quotes.price.QuoteSettings;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.Uuids;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Makes quotes and changes drafts. */
@Service
@ForOffice
@Transactional
public class Quotes {

    private final QuoteStore store;
    private final LineStore lineStore;
    private final DiscountStore discounts;
    private final NewQuote fresh;
    private final Prices prices;
    private final Clock clock;

    Quotes(QuoteStore store, LineStore lineStore, DiscountStore discounts, NewQuote fresh, Prices prices, Clock clock) {
        this.store = store;
        this.lineStore = lineStore;
        this.discounts = discounts;
        this.fresh = fresh;
        this.prices = prices;
        this.clock = clock;
    }

    /** Makes a draft with a line for all that the design asks for. */
    public QuoteId fromDesign(ChosenDesign design, String by) {
        return open(fresh.whom(design), design, by);
    }

    /** Makes a draft; without a design it has no lines yet. */
    public QuoteId open(QuoteFor who, @Nullable ChosenDesign design, String by) {
        LocalDate today = LocalDate.now(clock);
        QuoteSettings settings = prices.settings();
        QuoteId id = QuoteId.next();
        store.add(id, who, by);
        List<QuoteLine> lines = design == null
                ? List.of()
                : BillOfMaterials.of(design, prices, today, usualTax(today), fresh.kilometres(who.site(), design));
        store.open(
                id,
                1,
                new QuoteStore.Terms(
                        settings.currency(), settings.taxRounding(), today.plusDays(settings.validDays()), null, null),
                design,
                lines);
        store.enquiry(id, "QUOTED", null);
        store.step(id, 1, Step.Kind.CREATED, by, null);
        return id;
    }

    /** Opens another draft with the lines and prices of the last revision; what was sent stays in force until this is sent. */
    public void revise(QuoteId id, String by) {
        Revision last = store.hold(id);
        if (last.state() == QuoteState.DRAFT) {
            throw new Conflict("Revision " + last.revision() + " is still a draft. Change that one.");
        }
        if (last.state() == QuoteState.ACCEPTED) {
            throw new Conflict("This quote is accepted. What changes now is a variation of the job.");
        }
        List<QuoteLine> lines = last.lines().stream().map(Quotes::copy).toList();
        LocalDate valid = LocalDate.now(clock).plusDays(prices.settings().validDays());
        UUID next = store.open(
                id,
                last.revision() + 1,
                new QuoteStore.Terms(last.currency(), last.taxRounding(), valid, last.intro(), last.terms()),
                last.design(),
                lines);
        for (int i = 0; i < last.discounts().size(); i++) {
            Discount same = last.discounts().get(i);
            discounts.add(
                    next,
                    i + 1,
                    new Discount(Uuids.next(), same.lineGroup(), same.percent(), same.amount(), same.text()));
        }
        store.step(id, last.revision() + 1, Step.Kind.REVISED, by, null);
    }

    /** Writes whom it is for and its terms if nobody changed them meanwhile. */
    public void change(QuoteId id, HeadForm form) {
        Revision draft = draft(id);
        if (!store.changeWhom(id, form) || !store.changeTerms(draft.id(), form)) {
            throw new OptimisticLockingFailureException("quote " + id);
        }
    }

    /** Makes a draft without a design, as its page posts it. */
    public QuoteId open(HeadForm form, String by) {
        QuoteId id = open(
                new QuoteFor(
                        null,
                        null,
                        null,
                        java.util.Objects.requireNonNull(form.title()),
                        java.util.Objects.requireNonNull(form.customerName()),
                        form.address(),
                        form.email(),
                        form.phone(),
                        java.util.Objects.requireNonNull(form.place())),
                null,
                by);
        change(id, form.withVersions(HeadForm.of(store.card(id), store.latest(id))));
        return id;
    }

    /** What a new quote starts with. */
    @Transactional(readOnly = true)
    public HeadForm blank() {
        LocalDate until = LocalDate.now(clock).plusDays(prices.settings().validDays());
        return new HeadForm(null, null, null, null, null, null, until, null, null, null, null);
    }

    @Transactional(readOnly = true)
    public HeadForm head(QuoteId id) {
        return HeadForm.of(store.card(id), store.latest(id));
    }

    public void addLine(QuoteId id, LineForm form) {
        Revision draft = draft(id);
        lineStore.add(draft.id(), draft.lines().size() + 1, line(Uuids.next(), form, null, 0));
    }

    public void changeLine(QuoteId id, UUID line, LineForm form) {
        Revision draft = draft(id);
        QuoteLine present = line(draft, line);
        int version = form.version() == null ? -1 : form.version();
        if (!lineStore.change(draft.id(), line(line, form, present.thingId(), version))) {
            throw new OptimisticLockingFailureException("line " + line);
        }
    }

    public void removeLine(QuoteId id, UUID line) {
        if (!lineStore.remove(draft(id).id(), line)) {
            throw new Missing("line", line);
        }
    }

    /** The form of a line as it stands. */
    @Transactional(readOnly = true)
    public LineForm form(QuoteId id, UUID line) {
        QuoteLine present = line(store.latest(id), line);
        UUID tax = taxes().stream()
                .filter(each -> each.price().compareTo(present.taxPercent()) == 0)
                .findFirst()
                .map(PricedThing::id)
                .orElse(null);
        return new LineForm(
                present.lineGroup(),
                present.text(),
                present.note(),
                present.quantity().stripTrailingZeros().scale() < 0
                        ? present.quantity().setScale(0)
                        : present.quantity().stripTrailingZeros(),
                present.unit(),
                present.price(),
                present.cost(),
                present.discountPercent(),
                tax,
                present.version());
    }

    /** A blank line, or one of the price list. */
    @Transactional(readOnly = true)
    public LineForm blank(@Nullable UUID thing) {
        LocalDate today = LocalDate.now(clock);
        UUID tax = usualTax(today).id();
        PricedThing priced = thing == null ? null : prices.byId(thing, today).orElse(null);
        if (priced == null) {
            return new LineForm(
                    LineGroup.OTHER, null, null, BigDecimal.ONE, "piece", null, null, BigDecimal.ZERO, tax, null);
        }
        return new LineForm(
                group(priced.kind()),
                priced.name(),
                null,
                BigDecimal.ONE,
                priced.unit(),
                priced.price(),
                priced.cost(),
                BigDecimal.ZERO,
                tax,
                null);
    }

    /** Tax rates of today, the usual one first. */
    @Transactional(readOnly = true)
    public List<PricedThing> taxes() {
        return prices.of(PriceKind.TAX, LocalDate.now(clock)).stream()
                .sorted(Comparator.comparing(PricedThing::price).reversed())
                .toList();
    }

    private QuoteLine line(UUID id, LineForm form, @Nullable UUID thing, int version) {
        PricedThing tax = taxes().stream()
                .filter(each -> each.id().equals(form.tax()))
                .findFirst()
                .orElseThrow(() -> new Conflict("This tax rate does not hold today. Choose another."));
        return new QuoteLine(
                id,
                java.util.Objects.requireNonNull(form.lineGroup()),
                java.util.Objects.requireNonNull(form.text()),
                form.note(),
                java.util.Objects.requireNonNull(form.quantity()),
                java.util.Objects.requireNonNull(form.unit()),
                form.price(),
                form.cost(),
                form.discountPercent() == null ? BigDecimal.ZERO : form.discountPercent(),
                tax.name(),
                tax.price(),
                thing,
                true,
                version);
    }

    private Revision draft(QuoteId id) {
        Revision last = store.hold(id);
        if (!last.isDraft()) {
            throw new Conflict("This quote was sent and does not change any more. Revise it first.");
        }
        return last;
    }

    private static QuoteLine line(Revision revision, UUID line) {
        return revision.lines().stream()
                .filter(each -> each.id().equals(line))
                .findFirst()
                .orElseThrow(() -> new Missing("line", line));
    }

    /** The usual rate is the greatest of those that hold: forgetting to choose never taxes too little. */
    private PricedThing usualTax(LocalDate day) {
        return prices.of(PriceKind.TAX, day).stream()
                .max(Comparator.comparing(PricedThing::price))
                .orElseThrow(() ->
                        new Conflict("The price list has no tax rate for today. Add one first, 0 % if no tax is due."));
    }

    private static QuoteLine copy(QuoteLine line) {
        return new QuoteLine(
                Uuids.next(),
                line.lineGroup(),
                line.text(),
                line.note(),
                line.quantity(),
                line.unit(),
                line.price(),
                line.cost(),
                line.discountPercent(),
                line.taxName(),
                line.taxPercent(),
                line.thingId(),
                line.byHand(),
                0);
    }

    private static LineGroup group(PriceKind kind) {
        return switch (kind) {
            case PUMP, FITTINGS_KIT, STRAINER -> LineGroup.PUMPS;
            case PIPE -> LineGroup.DELIVERY_PIPE;
            case VESSEL -> LineGroup.VESSEL;
            case VALVE -> LineGroup.VALVES;
            case TANK -> LineGroup.TANK;
            case LABOUR -> LineGroup.LABOUR;
            case TRAVEL -> LineGroup.TRAVEL;
            case TAX, OTHER -> LineGroup.OTHER;
        };
    }
}
