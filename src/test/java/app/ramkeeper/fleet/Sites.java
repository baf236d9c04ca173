package app.ramkeeper.fleet;

import java.util.List;
import org.springframework.boot.test.context.TestComponent;

/** Makes sites for tests. */
@TestComponent
public class Sites {

    /** Where test sites lie unless a test says otherwise. */
    public static final Position HILLS = new Position(-45.0312, 168.6626);

    private final SiteRegister sites;
    private final CustomerRegister customers;

    Sites(SiteRegister sites, CustomerRegister customers) {
        this.sites = sites;
        this.customers = customers;
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

    public SiteId with(SiteDetails details) {
        return AsOffice.call(() -> sites.register(details, List.of()));
    }
}
