package app.ramkeeper.quotes.job;

import app.ramkeeper.fleet.ConfigurationDetails;
import app.ramkeeper.fleet.CustomerDetails;
import app.ramkeeper.fleet.CustomerId;
import app.ramkeeper.fleet.CustomerRegister;
import app.ramkeeper.fleet.InstallDetails;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.InstallRegister;
import app.ramkeeper.fleet.RegisterInstall;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.quotes.design.ChosenDesign;
import app.ramkeeper.quotes.design.ChosenDesign.PipeLine;
import app.ramkeeper.quotes.offer.QuoteAccepted;
import app.ramkeeper.quotes.offer.QuoteCard;
import app.ramkeeper.quotes.offer.QuoteFile;
import app.ramkeeper.quotes.offer.Revision;
import app.ramkeeper.quotes.survey.SurveyedPlace;
import app.ramkeeper.quotes.survey.Surveys;
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
 * <p>The install has its service tasks at once; upkeep counts them from its commissioning.
 */
@Component
class HandOver {

    private static final Logger LOG = LoggerFactory.getLogger(HandOver.class);
    private static final int INSTALLATION_MINUTES = 480;
    private static final int COMMISSIONING_MINUTES = 180;
    private static final int MOST_NOTE = 9000;

    private final QuoteFile quotes;
    private final CustomerRegister customers;
    private final SiteHandOver places;
    private final InstallRegister installs;
    private final Surveys surveys;
    private final Visits visits;
    private final JobStore jobs;

    HandOver(
            QuoteFile quotes,
            CustomerRegister customers,
            SiteHandOver places,
            InstallRegister installs,
            Surveys surveys,
            Visits visits,
            JobStore jobs) {
        this.quotes = quotes;
        this.customers = customers;
        this.places = places;
        this.installs = installs;
        this.surveys = surveys;
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
        ChosenDesign design = revision.design();
        SurveyedPlace place =
                design == null ? null : surveys.place(design.survey()).orElse(null);
        SiteId site = places.site(card, customer, place);
        if (place != null) {
            places.consents(site, place);
        }
        InstallId install = design == null ? null : install(site, design);
        VisitId installation =
                visit(site, VisitKind.INSTALLATION, INSTALLATION_MINUTES, note(card) + openPoints(design));
        VisitId commissioning =
                install == null ? null : visit(site, VisitKind.COMMISSIONING, COMMISSIONING_MINUTES, note(card));
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

    private VisitId visit(SiteId site, VisitKind kind, int minutes, String note) {
        return visits.plan(new PlanVisit(site, kind, null, null, minutes, List.of(), List.of(), note));
    }

    private static String note(QuoteCard card) {
        return "From quote " + card.name() + ": " + card.title();
    }

    /** What is still to be settled before anybody digs. */
    private static String openPoints(@Nullable ChosenDesign design) {
        if (design == null || design.openPoints().isEmpty()) {
            return "";
        }
        String points = "\nStill open, settle it first:\n- " + String.join("\n- ", design.openPoints());
        return points.length() <= MOST_NOTE ? points : points.substring(0, MOST_NOTE);
    }
}
