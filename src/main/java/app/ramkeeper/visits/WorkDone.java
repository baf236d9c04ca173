package app.ramkeeper.visits;

import app.ramkeeper.catalogue.TaskKindId;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.PumpId;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What a report in force says of one task: the answer, by whom, on which day. */
public record WorkDone(
        ReportId report,
        LocalDate on,
        InstallId install,
        @Nullable PumpId pump,
        TaskKindId kind,
        @Nullable UUID task,
        WorkOutcome outcome,
        @Nullable Reason reason,
        @Nullable LocalDate lookAgainOn,
        DoneBy by,
        boolean about,
        @Nullable String note) {}
