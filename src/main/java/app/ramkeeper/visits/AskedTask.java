package app.ramkeeper.visits;

import app.ramkeeper.catalogue.TaskKindId;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.PumpId;
import app.ramkeeper.fleet.SiteId;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A service task as a visit asks for it.
 *
 * @param pumpName the pump in a battery, else null
 * @param state its state in words, such as "overdue, 34 days late"
 */
public record AskedTask(
        UUID task,
        SiteId site,
        InstallId install,
        String installName,
        @Nullable PumpId pump,
        @Nullable String pumpName,
        TaskKindId kind,
        String kindName,
        int minutes,
        @Nullable LocalDate dueOn,
        String state) {}
