package app.ramkeeper.quotes.offer;

import app.ramkeeper.quotes.design.ChosenDesign;
import app.ramkeeper.quotes.price.QuoteSettings.TaxRounding;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** One revision of a quote with its lines, as the office sees it. */
public record Revision(
        UUID id,
        QuoteId quote,
        int revision,
        QuoteState state,
        @Nullable ChosenDesign design,
        String currency,
        TaxRounding taxRounding,
        LocalDate validUntil,
        @Nullable String intro,
        @Nullable String terms,
        @Nullable Instant sentAt,
        @Nullable String sentBy,
        byte @Nullable [] pdfSha256,
        @Nullable Instant decidedAt,
        @Nullable String decidedBy,
        @Nullable Answered decidedHow,
        @Nullable String decidedReason,
        int version,
        List<QuoteLine> lines,
        List<Discount> discounts) {

    public Reckoning.Totals totals() {
        return Reckoning.totals(lines, discounts, taxRounding);
    }

    /** What everything costs the company; lines without a cost count nothing. */
    public BigDecimal cost() {
        return lines.stream().map(Reckoning::cost).reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    /** Net less cost. */
    public BigDecimal margin() {
        return totals().net().subtract(cost());
    }

    public List<QuoteLine> of(LineGroup group) {
        return lines.stream().filter(line -> line.lineGroup() == group).toList();
    }

    public List<LineGroup> groups() {
        return List.of(LineGroup.values()).stream()
                .filter(group -> !of(group).isEmpty())
                .toList();
    }

    /** How many lines have a price but no cost: the margin is too high by theirs. */
    public long withoutCost() {
        return lines.stream().filter(line -> line.cost() == null).count();
    }

    public boolean isDraft() {
        return state == QuoteState.DRAFT;
    }

    /** Sent and still open on a day. */
    public boolean isOpenOn(LocalDate day) {
        return state == QuoteState.SENT && !validUntil.isBefore(day);
    }
}
