package app.ramkeeper.quotes.job;

import app.ramkeeper.fleet.ConfigurationDetails;
import app.ramkeeper.fleet.ConsentDetails;
import app.ramkeeper.fleet.ConsentKind;
import app.ramkeeper.fleet.CustomerDetails;
import app.ramkeeper.fleet.CustomerId;
import app.ramkeeper.fleet.CustomerRegister;
import app.ramkeeper.fleet.InstallDetails;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.InstallRegister;
import app.ramkeeper.fleet.NewParty;
import app.ramkeeper.fleet.Papers;
import app.ramkeeper.fleet.RegisterInstall;
import app.ramkeeper.fleet.SiteDetails;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.SitePart;
import app.ramkeeper.fleet.SiteRegister;
import app.ramkeeper.quotes.design.ChosenDesign;
import app.ramkeeper.quotes.design.ChosenDesign.PipeLine;
import app.ramkeeper.quotes.offer.QuoteAccepted;
import app.ramkeeper.quotes.offer.QuoteCard;
import app.ramkeeper.quotes.offer.QuoteFile;
import app.ramkeeper.quotes.offer.Revision;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.PlanVisit;
import app.ramkeeper.visits.VisitId;
import app.ramkeeper.visits.VisitKind;
import app.ramkeeper.visits.Visits;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/**
 * Turns an accepted quote into a site with a planned install, two visits to plan, and a job; in the transaction of the
 * answer. The job has the quote's key, and the quote's row is held, so it happens once however often somebody clicks.
 *
 * <p>The install's service tasks come with its commissioning: upkeep counts from that day.
 */
@Component
class HandOver {

    private static final Logger LOG = LoggerFactory.getLogger(HandOver.class);
    private static final int INSTALLATION_MINUTES = 480;
    private static final int COMMISSIONING_MINUTES = 180;

    private final QuoteFile quotes;
    private final CustomerRegister customers;
    private final SiteRegister sites;
    private final InstallRegister installs;
    private final Papers papers;
    private final Visits visits;
    private final JobStore jobs;

    HandOver(
            QuoteFile quotes,
            CustomerRegister customers,
            SiteRegister sites,
            InstallRegister installs,
            Papers papers,
            Visits visits,
            JobStore jobs) {
        this.quotes = quotes;
        this.customers = customers;
        this.sites = sites;
        this.installs = installs;
        this.papers = papers;
        this.visits = visits;
        this.jobs = jobs;
    }

    @EventListener
    void on(QuoteAccepted event) {
        JobId job = new JobId(event.quote().value());
        if (jobs.exists(job)) {
            return;
        }
        QuoteCard card = quotes.card(event.quote());
        Revision revision = quotes.revision(event.quote(), event.revision());
        CustomerId customer = customer(card);
        SiteId site = site(card, customer);
        ChosenDesign design = revision.design();
        InstallId install = design == null ? null : install(site, design);
        VisitId installation = visit(site, VisitKind.INSTALLATION, INSTALLATION_MINUTES, card);
        VisitId commissioning =
                install == null ? null : visit(site, VisitKind.COMMISSIONING, COMMISSIONING_MINUTES, card);
        if (design != null) {
            design.openPoints().forEach(point -> openPoint(site, point));
        }
        jobs.add(job, revision, customer, site, install, installation, commissioning);
        jobs.addPhases(job, install != null);
        jobs.addBilling(job, card, revision, customer);
        quotes.handedOver(event.quote(), event.revision(), customer, site, "system");
        LOG.info("Quote {} handed over: site {}, install {}", event.quote(), site, install);
    }

    private CustomerId customer(QuoteCard card) {
        return card.customerId() != null
                ? new CustomerId(card.customerId())
                : customers.register(new CustomerDetails(
                        null, card.customerName(), card.address(), card.email(), card.phone(), null));
    }

    private SiteId site(QuoteCard card, CustomerId customer) {
        return card.siteId() != null
                ? new SiteId(card.siteId())
                : sites.register(
                        SiteDetails.named(card.place(), null),
                        List.of(NewParty.of(SitePart.OWNER, customer), NewParty.of(SitePart.PAYER, customer)));
    }

    /** Planned: neither commissioned nor at work since unknown times; the design is its design point. */
    private InstallId install(SiteId site, ChosenDesign design) {
        String name = "Ram pump " + design.pumpName();
        return installs.register(new RegisterInstall(
                site,
                new InstallDetails(null, name.length() <= 100 ? name : name.substring(0, 100), null, true, null),
                configuration(design),
                null,
                List.of()));
    }

    private static ConfigurationDetails configuration(ChosenDesign design) {
        List<PipeLine> delivery = design.delivery();
        String pipes = delivery.stream().map(PipeLine::name).distinct().collect(Collectors.joining(", "));
        return new ConfigurationDetails(
                rounded(design.fallM(), 100),
                rounded(design.liftM(), 100),
                design.drive().name(),
                rounded(design.drive().boreMm(), 10),
                rounded(design.drive().lengthM(), 10),
                pipes.length() <= 100 ? pipes : pipes.substring(0, 100),
                delivery.isEmpty() ? null : rounded(delivery.get(0).boreMm(), 10),
                rounded(delivery.stream().mapToDouble(PipeLine::lengthM).sum(), 10),
                null,
                rounded(design.driveFlowLMin(), 10),
                rounded(design.deliveredLMin(), 100),
                rounded(design.vessel().preChargeBar(), 100));
    }

    /** To so many parts of the unit, as a register is read and written. */
    private static @Nullable Double rounded(@Nullable Double value, int parts) {
        return value == null ? null : Math.round(value * parts) / (double) parts;
    }

    private VisitId visit(SiteId site, VisitKind kind, int minutes, QuoteCard card) {
        return visits.plan(new PlanVisit(
                site,
                kind,
                null,
                null,
                minutes,
                List.of(),
                List.of(),
                "From quote " + card.name() + ": " + card.title()));
    }

    /** Consents that are still to be settled go on the site's papers, where their number and expiry are added later. */
    private void openPoint(SiteId site, String point) {
        papers.keepConsent(
                Uuids.next(),
                site,
                new ConsentDetails(ConsentKind.OTHER, null, null, null, null, null, "To be settled: " + cut(point)));
    }

    private static @Nullable String cut(String text) {
        return text.length() <= 1000 ? text : text.substring(0, 1000);
    }
}
