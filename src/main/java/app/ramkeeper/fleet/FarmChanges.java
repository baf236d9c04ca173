package app.ramkeeper.fleet;

import app.ramkeeper.identity.ForRegister;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.web.Say;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Farms are sold and split, and one place that was registered twice becomes one again. */
@Service
@ForRegister
@Transactional
public class FarmChanges {

    private final SiteRepository sites;
    private final CustomerRepository customers;
    private final Papers papers;
    private final JdbcClient jdbc;
    private final ApplicationEventPublisher events;

    FarmChanges(
            SiteRepository sites,
            CustomerRepository customers,
            Papers papers,
            JdbcClient jdbc,
            ApplicationEventPublisher events) {
        this.sites = sites;
        this.customers = customers;
        this.papers = papers;
        this.jdbc = jdbc;
        this.events = events;
    }

    /**
     * The seller's parts end and the buyer's begin. Private notes and prices stay with the seller: the site's notes move
     * to the seller's page, the seller's agreements no longer cover the site's installs.
     */
    public void sell(SellFarm sale) {
        if (sale.seller().equals(sale.buyer())) {
            throw new Conflict("buyer", "Seller and buyer are the same customer.");
        }
        Site site = live(sale.site());
        Customer seller =
                customers.findById(sale.seller().value()).orElseThrow(() -> new Missing("customer", sale.seller()));
        int taken = 0;
        for (SitePart part : sale.parts()) {
            taken += handOver(sale, part);
        }
        if (taken == 0) {
            throw noneTaken(sale);
        }
        takeNotesAlong(site, seller, sale);
        papers.endFor(sale.site(), sale.seller(), sale.on());
    }

    private Conflict noneTaken(SellFarm sale) {
        return jdbc.sql("""
                        select min(from_date) from site_parties
                        where site_id = :site and customer_id = :seller and part = any(:parts) and until_date is null""")
                .param("site", sale.site().value())
                .param("seller", sale.seller().value())
                .param("parts", sale.parts().stream().map(SitePart::name).toArray(String[]::new))
                .query(LocalDate.class)
                .optional()
                .map(began -> new Conflict(
                        "on",
                        "The seller's part began on " + Say.day(began)
                                + "; the buyer's can begin the day after at the earliest."))
                .orElseGet(() -> new Conflict("parts", "The seller plays none of these parts at this site any more."));
    }

    /** The first day of which anything is known at a site: a part that somebody played, a commissioning; else 1900. */
    @Transactional(readOnly = true)
    public LocalDate knownSince(SiteId site) {
        return jdbc.sql("""
                        select coalesce(min(known.day), date '1900-01-01') from (
                          select from_date as day from site_parties where site_id = :site
                          union all select commissioned_on from installs where site_id = :site) known""").param("site", site.value()).query(LocalDate.class).single();
    }

    private int handOver(SellFarm sale, SitePart part) {
        List<UUID> ended = jdbc.sql("""
                        update site_parties set until_date = :on
                        where site_id = :site and customer_id = :seller and part = :part and until_date is null
                          and (from_date is null or from_date < :on) returning id""")
                .param("on", sale.on())
                .param("site", sale.site().value())
                .param("seller", sale.seller().value())
                .param("part", part.name())
                .query(UUID.class)
                .list();
        ended.forEach(row -> jdbc.sql("""
                        insert into site_parties (id, site_id, part, customer_id, from_date, share)
                        select :id, site_id, part, :buyer, :on, share from site_parties where id = :row""")
                .param("id", Uuids.next())
                .param("buyer", sale.buyer().value())
                .param("on", sale.on())
                .param("row", row)
                .update());
        return ended.size();
    }

    private void takeNotesAlong(Site site, Customer seller, SellFarm sale) {
        String notes = site.details.privateNotes();
        if (notes == null) {
            return;
        }
        String before = seller.details.privateNotes();
        String moved = "%s, sold on %s:\n%s".formatted(site.details.name(), Say.day(sale.on()), notes);
        seller.details = seller.details.withPrivateNotes(before == null ? moved : before + "\n\n" + moved);
        site.details = site.details.withPrivateNotes(null);
        customers.flush();
        sites.flush();
    }

    /** Some installs become a site of their own, with the same people, access and hazards. */
    public SiteId split(SplitSite command) {
        Site old = live(command.site());
        if (command.installs().isEmpty()) {
            throw new Conflict("Choose the installs that go to the new site.");
        }
        if (jdbc.sql("select count(*) from installs where site_id = ? and not (id = any(?))")
                        .params(
                                command.site().value(),
                                command.installs().stream()
                                        .map(InstallId::value)
                                        .toArray(UUID[]::new))
                        .query(Long.class)
                        .single()
                == 0) {
            throw new Conflict(
                    "installs",
                    "Leave at least one install at this site. To give all of it another name, edit the site.");
        }
        SiteId id = SiteId.next();
        sites.saveAndFlush(new Site(id.value(), old.details.forPartOf(command.newName())));
        copyNotes(command.site(), id);
        copyParties(command, id);
        command.installs().forEach(install -> move(install, command.site(), id));
        return id;
    }

    private void copyNotes(SiteId from, SiteId to) {
        copy("site_hazards", "kind, text", from, to);
        copy("access_windows", "weekday, from_time, until_time", from, to);
        copy("closed_periods", "from_date, until_date, reason", from, to);
    }

    private void copy(String table, String columns, SiteId from, SiteId to) {
        jdbc.sql(
                        "insert into %1$s (id, site_id, %2$s) select gen_random_uuid(), :to, %2$s from %1$s where site_id = :from"
                                .formatted(table, columns))
                .param("from", from.value())
                .param("to", to.value())
                .update();
    }

    private void copyParties(SplitSite command, SiteId to) {
        CustomerId owner = command.newOwner();
        jdbc.sql("""
                        insert into site_parties (id, site_id, part, customer_id, contact_id, from_date, share)
                        select gen_random_uuid(), :to, part, customer_id, contact_id, :on, share from site_parties
                        where site_id = :from and until_date is null and (:same or part not in ('OWNER', 'PAYER'))""")
                .param("to", to.value())
                .param("from", command.site().value())
                .param("on", command.on())
                .param("same", owner == null)
                .update();
        if (owner != null) {
            jdbc.sql("""
                            insert into site_parties (id, site_id, part, customer_id, from_date)
                            select gen_random_uuid(), :to, part, :owner, :on from unnest(array['OWNER', 'PAYER']) as part""")
                    .param("to", to.value())
                    .param("owner", owner.value())
                    .param("on", command.on())
                    .update();
        }
    }

    /** Makes a duplicate a signpost to the kept site, which takes over its installs, people, notes and papers. */
    public void merge(SiteId duplicate, SiteId kept) {
        if (duplicate.equals(kept)) {
            throw new Conflict("A site cannot be merged into itself.");
        }
        Site gone = live(duplicate);
        live(kept);
        gone.mergedInto = kept.value();
        sites.flush();
        moveRows("update sites set merged_into = :kept where merged_into = :gone", duplicate, kept);
        List<UUID> installs = jdbc.sql("select id from installs where site_id = :gone")
                .param("gone", duplicate.value())
                .query(UUID.class)
                .list();
        installs.forEach(install -> move(new InstallId(install), duplicate, kept));
        dropWhatIsThereAlready(duplicate, kept);
        for (String table : List.of("site_parties", "site_hazards", "access_windows", "closed_periods", "consents")) {
            moveRows("update " + table + " set site_id = :kept where site_id = :gone", duplicate, kept);
        }
        events.publishEvent(new SitesMerged(duplicate, kept));
    }

    private void dropWhatIsThereAlready(SiteId duplicate, SiteId kept) {
        moveRows("""
                delete from site_parties d using site_parties k
                where d.site_id = :gone and k.site_id = :kept and k.part = d.part
                  and coalesce(k.customer_id, k.contact_id) = coalesce(d.customer_id, d.contact_id)
                  and daterange(k.from_date, k.until_date) && daterange(d.from_date, d.until_date)""", duplicate, kept);
        moveRows("""
                delete from access_windows d using access_windows k
                where d.site_id = :gone and k.site_id = :kept and k.weekday = d.weekday
                  and k.from_time < d.until_time and d.from_time < k.until_time""", duplicate, kept);
        moveRows("""
                delete from site_hazards d using site_hazards k
                where d.site_id = :gone and k.site_id = :kept and k.kind = d.kind and k.text is not distinct from d.text""", duplicate, kept);
    }

    private void moveRows(String sql, SiteId duplicate, SiteId kept) {
        jdbc.sql(sql)
                .param("kept", kept.value())
                .param("gone", duplicate.value())
                .update();
    }

    private void move(InstallId install, SiteId from, SiteId to) {
        int moved = jdbc.sql(
                        "update installs set site_id = :to, version = version + 1 where id = :id and site_id = :from")
                .param("to", to.value())
                .param("id", install.value())
                .param("from", from.value())
                .update();
        if (moved == 0) {
            throw new Missing("install", install);
        }
        events.publishEvent(new InstallMoved(install, from, to));
    }

    private Site live(SiteId id) {
        Site site = sites.findById(id.value()).orElseThrow(() -> new Missing("site", id));
        if (site.mergedInto != null) {
            throw new Conflict("That site was merged into another one already.");
        }
        return site;
    }
}
