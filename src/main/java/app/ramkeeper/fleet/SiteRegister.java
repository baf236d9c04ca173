package app.ramkeeper.fleet;

import app.ramkeeper.identity.ForRegister;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.Uuids;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Keeps sites: what is known of them, who plays which part, what can hurt, when one may come. */
@Service
@ForRegister
@Transactional
public class SiteRegister {

    private final SiteRepository sites;
    private final JdbcClient jdbc;
    private final JdbcTemplate batch;
    private final ApplicationEventPublisher events;

    SiteRegister(SiteRepository sites, JdbcClient jdbc, JdbcTemplate batch, ApplicationEventPublisher events) {
        this.sites = sites;
        this.jdbc = jdbc;
        this.batch = batch;
        this.events = events;
    }

    /** Puts a site on the register with the people round it. */
    public SiteId register(SiteDetails details, List<NewParty> parties) {
        SiteId id = SiteId.next();
        register(id, details, parties);
        return id;
    }

    /** Registers under an id made by the form, so that a second post of it changes nothing. */
    public void register(SiteId id, SiteDetails details, List<NewParty> parties) {
        if (!sites.existsById(id.value())) {
            registerAll(Map.of(id, new RegisterSite(details, parties)));
        }
    }

    /** Registers many new sites in one go, each under an id the caller made: an import. */
    public void registerAll(Map<SiteId, RegisterSite> added) {
        List<Site> rows = new ArrayList<>();
        List<PartyAt> parties = new ArrayList<>();
        added.forEach((id, command) -> {
            rows.add(new Site(id.value(), command.site()));
            command.parties().forEach(party -> parties.add(new PartyAt(id, party)));
        });
        sites.saveAllAndFlush(rows);
        addParties(parties);
    }

    /** A party and the site it belongs to. */
    private record PartyAt(SiteId site, NewParty party) {}

    private void addParties(List<PartyAt> parties) {
        batch.batchUpdate("""
                insert into site_parties (id, site_id, part, customer_id, contact_id, from_date, share)
                values (?, ?, ?, ?, ?, ?, ?)""", parties, 1000, (row, at) -> {
            NewParty party = at.party();
            row.setObject(1, Uuids.next());
            row.setObject(2, at.site().value());
            row.setString(3, party.part().name());
            row.setObject(4, party.customer() == null ? null : party.customer().value());
            row.setObject(5, party.contact() == null ? null : party.contact().value());
            row.setObject(6, party.from());
            row.setBigDecimal(7, party.share());
        });
    }

    /**
     * Changes what is known about a site.
     *
     * @throws org.springframework.dao.OptimisticLockingFailureException if it is no longer at that version
     */
    public void edit(SiteId id, int version, SiteDetails details) {
        Site site = live(id);
        Versions.require(site.version, version, Site.class, id);
        boolean sameWater = site.details.sameWater(details);
        site.details = details;
        sites.flush();
        if (!sameWater) {
            events.publishEvent(new SiteChanged(id));
        }
    }

    /** Somebody takes a part; answers with the row's id. */
    public UUID addParty(SiteId site, NewParty party) {
        UUID id = Uuids.next();
        addParty(id, site, party);
        return id;
    }

    /** The same under an id made by the form: a second post of it changes nothing. */
    public void addParty(UUID id, SiteId site, NewParty party) {
        jdbc.sql("""
                        insert into site_parties (id, site_id, part, customer_id, contact_id, from_date, share)
                        values (:id, :site, :part, :customer, :contact, :from, :share) on conflict (id) do nothing""")
                .param("id", id)
                .param("site", site.value())
                .param("part", party.part().name())
                .param(
                        "customer",
                        party.customer() == null ? null : party.customer().value())
                .param(
                        "contact",
                        party.contact() == null ? null : party.contact().value())
                .param("from", party.from())
                .param("share", party.share())
                .update();
    }

    /** Ends a part; the day is the first on which it is no longer played. */
    public void endParty(SiteId site, UUID party, LocalDate until) {
        int ended = jdbc.sql("""
                        update site_parties set until_date = :until
                        where id = :id and site_id = :site and until_date is null""")
                .param("id", party)
                .param("site", site.value())
                .param("until", until)
                .update();
        if (ended == 0) {
            throw new Missing("party", party);
        }
    }

    public UUID addHazard(SiteId site, HazardKind kind, @Nullable String text) {
        UUID id = Uuids.next();
        addHazard(id, site, kind, text);
        return id;
    }

    /** The same under an id made by the form: a second post of it changes nothing. */
    public void addHazard(UUID id, SiteId site, HazardKind kind, @Nullable String text) {
        jdbc.sql(
                        "insert into site_hazards (id, site_id, kind, text) values (:id, :site, :kind, :text) on conflict (id) do nothing")
                .param("id", id)
                .param("site", site.value())
                .param("kind", kind.name())
                .param("text", text)
                .update();
    }

    public UUID addWindow(SiteId site, AccessWindow window) {
        UUID id = Uuids.next();
        addWindow(id, site, window);
        return id;
    }

    /** The same under an id made by the form: a second post of it changes nothing. */
    public void addWindow(UUID id, SiteId site, AccessWindow window) {
        jdbc.sql("""
                        insert into access_windows (id, site_id, weekday, from_time, until_time)
                        values (:id, :site, :weekday, :from, :until) on conflict (id) do nothing""")
                .param("id", id)
                .param("site", site.value())
                .param("weekday", window.weekday())
                .param("from", window.from())
                .param("until", window.until())
                .update();
    }

    public UUID addClosedPeriod(SiteId site, ClosedPeriod period) {
        UUID id = Uuids.next();
        addClosedPeriod(id, site, period);
        return id;
    }

    /** The same under an id made by the form: a second post of it changes nothing. */
    public void addClosedPeriod(UUID id, SiteId site, ClosedPeriod period) {
        jdbc.sql("""
                        insert into closed_periods (id, site_id, from_date, until_date, reason)
                        values (:id, :site, :from, :until, :reason) on conflict (id) do nothing""")
                .param("id", id)
                .param("site", site.value())
                .param("from", period.from())
                .param("until", period.until())
                .param("reason", period.reason())
                .update();
    }

    /** Removes a hazard, an access window or a closed period that no longer holds. */
    public void remove(SiteId site, SiteNote kind, UUID row) {
        int removed = jdbc.sql("delete from " + kind.table() + " where id = :id and site_id = :site")
                .param("id", row)
                .param("site", site.value())
                .update();
        if (removed == 0) {
            throw new Missing(kind.word(), row);
        }
    }

    /**
     * Takes sites off the register again that nothing refers to and nobody has changed: an import undone.
     *
     * @return those that are in use or were changed; if there are any, none is taken off
     */
    public List<UUID> removeUntouched(Collection<SiteId> untouched) {
        UUID[] ids = untouched.stream().map(SiteId::value).toArray(UUID[]::new);
        List<UUID> touched = jdbc.sql("""
                        select asked.id from unnest(:ids::uuid[]) as asked(id) where not exists (select from sites s where s.id = asked.id
                          and version = 0
                          and not exists (select from installs i where i.site_id = s.id)
                          and not exists (select from consents c where c.site_id = s.id)
                          and not exists (select from sites m where m.merged_into = s.id))""").param("ids", ids).query(UUID.class).list();
        if (touched.isEmpty()) {
            for (String table : List.of("site_parties", "site_hazards", "access_windows", "closed_periods")) {
                jdbc.sql("delete from " + table + " where site_id = any(:ids)")
                        .param("ids", ids)
                        .update();
            }
            jdbc.sql("delete from sites where id = any(:ids)").param("ids", ids).update();
        }
        return touched;
    }

    private Site live(SiteId id) {
        Site site = sites.findById(id.value()).orElseThrow(() -> new Missing("site", id));
        if (site.mergedInto != null) {
            throw new Conflict("That site was merged into another one; change the one that was kept.");
        }
        return site;
    }

    /** What an edit form shows, private notes included. */
    @Transactional(readOnly = true)
    public Versioned<SiteDetails> read(SiteId id) {
        Site site = sites.findById(id.value()).orElseThrow(() -> new Missing("site", id));
        return new Versioned<>(Versions.of(site.version), site.details);
    }
}
