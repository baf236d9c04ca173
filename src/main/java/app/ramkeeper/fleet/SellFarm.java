package app.ramkeeper.fleet;

import java.time.LocalDate;
import java.util.Set;

/**
 * A farm changes hands.
 *
 * @param on the buyer's first day
 * @param parts the seller's parts that the buyer takes over
 */
public record SellFarm(SiteId site, CustomerId seller, CustomerId buyer, LocalDate on, Set<SitePart> parts) {}
