package app.ramkeeper.visits;

import app.ramkeeper.fleet.SiteId;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.UUID;

/** Tells visits which service tasks there are. The feature that keeps due dates, a module above, implements it as a bean. */
public interface AskedTasks {

    /** The tasks with these ids, those that exist. */
    List<AskedTask> byId(Collection<UUID> tasks);

    /** Our tasks at a site that a visit on this day should answer: overdue or within their window, awake, not declined. */
    List<AskedTask> openAt(SiteId site, LocalDate on);
}
