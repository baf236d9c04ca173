package app.ramkeeper.visits;

import app.ramkeeper.fleet.SiteId;
import java.time.LocalDate;
import java.util.List;

/**
 * A report was recorded, in the same transaction.
 *
 * <p>Reports may come late: the day attended can lie before the day of reports that are recorded already. When a report
 * corrects another, {@link ReportSuperseded} came first.
 */
public record VisitReported(
        ReportId report,
        SiteId site,
        VisitKind kind,
        LocalDate attendedOn,
        List<WorkDone> works,
        List<PartFitted> parts) {

    public VisitReported {
        works = List.copyOf(works);
        parts = List.copyOf(parts);
    }
}
