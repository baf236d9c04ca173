package app.ramkeeper.visits;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Something left to do at a site; promised if the customer was told so. */
public record OpenFollowUp(
        UUID id,
        ReportId report,
        LocalDate since,
        String text,
        @Nullable LocalDate dueOn,
        boolean promised) {}
