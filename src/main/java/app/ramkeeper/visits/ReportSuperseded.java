package app.ramkeeper.visits;

import app.ramkeeper.fleet.SiteId;
import java.util.List;

/**
 * A report is no longer in force: it was corrected or withdrawn, in the same transaction. What it said of tasks and
 * parts does not count any more; {@link Visits#worksOf} and {@link Visits#partsFitted} give what does.
 *
 * @param works what the report said of tasks
 * @param parts the parts it said were fitted
 */
public record ReportSuperseded(ReportId report, SiteId site, List<WorkDone> works, List<PartFitted> parts) {

    public ReportSuperseded {
        works = List.copyOf(works);
        parts = List.copyOf(parts);
    }
}
