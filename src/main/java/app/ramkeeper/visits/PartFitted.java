package app.ramkeeper.visits;

import app.ramkeeper.catalogue.PartId;
import app.ramkeeper.fleet.ComponentPosition;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.PumpId;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** A catalogue part that a report in force says was fitted. */
public record PartFitted(
        ReportId report,
        LocalDate on,
        InstallId install,
        @Nullable PumpId pump,
        PartId part,
        @Nullable ComponentPosition position) {}
