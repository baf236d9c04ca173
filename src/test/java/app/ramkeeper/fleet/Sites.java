package app.ramkeeper.fleet;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.springframework.boot.test.context.TestComponent;

/** Makes sites for tests. */
@TestComponent
public class Sites {

    /** Where test sites lie unless a test says otherwise. */
    public static final Position HILLS = new Position(-45.0312, 168.6626);

    private final SiteRegister sites;
    private final CustomerRegister customers;
    private final FarmChanges changes;

    Sites(SiteRegister sites, CustomerRegister customers, FarmChanges changes) {
        this.sites = sites;
        this.customers = customers;
        this.changes = changes;
    }

    /** A site without anybody. */
    public SiteId named(String name) {
        return AsOffice.call(() -> sites.register(SiteDetails.named(name, HILLS), List.of()));
    }

    /** A site with its owner. */
    public SiteId ownedBy(String owner, String name) {
        return AsOffice.call(() -> {
            CustomerId customer = customers.register(CustomerDetails.named(owner));
            return sites.register(SiteDetails.named(name, HILLS), List.of(NewParty.of(SitePart.OWNER, customer)));
        });
    }

    /** Makes a duplicate a signpost to the kept site. */
    public void merge(SiteId duplicate, SiteId kept) {
        AsOffice.run(() -> changes.merge(duplicate, kept));
    }

    /** Makes a site of its own of some installs. */
    public SiteId split(SiteId site, String name, LocalDate on, InstallId... gone) {
        return AsOffice.call(() -> changes.split(new SplitSite(site, name, Set.of(gone), on, null)));
    }

    public SiteId with(SiteDetails details) {
        return AsOffice.call(() -> sites.register(details, List.of()));
    }
}
