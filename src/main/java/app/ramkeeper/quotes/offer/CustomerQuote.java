package app.ramkeeper.quotes.offer;

import app.ramkeeper.identity.Company;
import app.ramkeeper.quotes.design.ChosenDesign;
import app.ramkeeper.web.Plot;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What a customer gets to see of a revision. It has no place for costs, margins and internal reasons. */
public record CustomerQuote(
        Company.Card company,
        String number,
        int revision,
        QuoteState state,
        String title,
        String customerName,
        @Nullable String address,
        String place,
        LocalDate date,
        LocalDate validUntil,
        String currency,
        @Nullable String intro,
        @Nullable String terms,
        List<Group> groups,
        Reckoning.Totals totals,
        @Nullable Promise promise) {

    /** Lines under one heading. */
    public record Group(LineGroup group, List<Line> lines) {}

    /** One line without what it costs the company. */
    public record Line(
            String text,
            @Nullable String note,
            BigDecimal quantity,
            String unit,
            @Nullable BigDecimal price,
            BigDecimal discountPercent,
            BigDecimal amount,
            BigDecimal taxPercent) {}

    /** What the design is to do, and on what that rests. */
    public record Promise(
            double p10,
            double p50,
            double p90,
            double demand,
            double fallM,
            double liftM,
            double driveFlowLMin,
            int pumps,
            String pumpName,
            List<ChosenDesign.PipeLine> delivery,
            ChosenDesign.PipeLine drive,
            ChosenDesign.Vessel vessel,
            List<String> assumptions,
            List<String> openPoints,
            @Nullable Plot profile,
            List<ChosenDesign.ProfilePoint> points) {}

    /** Shown of a revision, without anything internal. */
    static CustomerQuote of(Company.Card company, QuoteCard card, Revision revision, LocalDate date) {
        List<Group> groups = revision.groups().stream()
                .map(group -> new Group(
                        group,
                        revision.of(group).stream().map(CustomerQuote::line).toList()))
                .toList();
        return new CustomerQuote(
                company,
                card.name(),
                revision.revision(),
                revision.state(),
                card.title(),
                card.customerName(),
                card.address(),
                card.place(),
                date,
                revision.validUntil(),
                revision.currency(),
                revision.intro(),
                revision.terms(),
                groups,
                revision.totals(),
                revision.design() == null ? null : promise(revision.design()));
    }

    private static Line line(QuoteLine line) {
        return new Line(
                line.text(),
                line.note(),
                line.quantity(),
                line.unit(),
                line.price(),
                line.discountPercent(),
                Reckoning.amount(line),
                line.taxPercent());
    }

    private static Promise promise(ChosenDesign design) {
        return new Promise(
                design.perDay().p10(),
                design.perDay().p50(),
                design.perDay().p90(),
                design.demandLDay(),
                design.fallM(),
                design.liftM(),
                design.driveFlowLMin(),
                design.pumps(),
                design.pumpName(),
                design.delivery(),
                design.drive(),
                design.vessel(),
                design.assumptions(),
                design.openPoints(),
                ProfilePlot.of(design),
                design.profile());
    }

    /** "Q2026-0007", with the revision from the second on. */
    public String name() {
        return revision == 1 ? number : number + " rev. " + revision;
    }

    public List<String> introLines() {
        return intro == null ? List.of() : intro.lines().toList();
    }

    public List<String> termsLines() {
        return terms == null ? List.of() : terms.lines().toList();
    }
}
