package app.ramkeeper.upkeep;

import app.ramkeeper.fleet.CatchmentId;
import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Position;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Uuids;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** A flood or the like makes a task due at every install of a valley or a map box, in one step. */
@Service
@ForOffice
@Transactional
public class WeatherEvents {

    private static final Logger LOG = LoggerFactory.getLogger(WeatherEvents.class);

    private final Fleet fleet;
    private final Forwarding forwarding;
    private final Recompute recompute;
    private final JdbcClient jdbc;
    private final Clock clock;

    WeatherEvents(Fleet fleet, Forwarding forwarding, Recompute recompute, JdbcClient jdbc, Clock clock) {
        this.fleet = fleet;
        this.forwarding = forwarding;
        this.recompute = recompute;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Where it struck: a catchment, or the corners of a box. */
    public record Area(
            @Nullable CatchmentId catchment,
            @Nullable Position southWest,
            @Nullable Position northEast) {}

    /** An event that was recorded. */
    public record Recorded(
            UUID id, String name, LocalDate onDate, LocalDate dueOn, String kind, int installs, Instant createdAt) {}

    /** The installs it would touch. */
    @Transactional(readOnly = true)
    public List<InstallId> touched(Area area) {
        if (area.catchment() != null) {
            return fleet.installsIn(area.catchment());
        }
        return area.southWest() == null || area.northEast() == null
                ? List.of()
                : fleet.installsIn(area.southWest(), area.northEast());
    }

    /** Records it and brings the tasks forward; returns how many installs were touched. */
    public int record(String name, LocalDate on, LocalDate due, UUID kind, Area area, PersonId by) {
        List<UUID> installs = touched(area).stream().map(InstallId::value).toList();
        forwarding.createMissing(kind, installs);
        forwarding.bring(kind, installs, on, due, name);
        recompute.installs(installs);
        UUID id = Uuids.next();
        Position southWest = area.southWest();
        Position northEast = area.northEast();
        jdbc.sql("""
                        insert into weather_events (id, name, on_date, due_on, task_kind_id, catchment_id, south, west, north, east, installs, created_at, created_by)
                        values (:id, :name, :on, :due, :kind, :catchment, :south, :west, :north, :east, :installs, :at, :by)""")
                .param("id", id)
                .param("name", name)
                .param("on", on)
                .param("due", due)
                .param("kind", kind)
                .param(
                        "catchment",
                        area.catchment() == null ? null : area.catchment().value())
                .param("south", southWest == null ? null : southWest.latitude())
                .param("west", southWest == null ? null : southWest.longitude())
                .param("north", northEast == null ? null : northEast.latitude())
                .param("east", northEast == null ? null : northEast.longitude())
                .param("installs", installs.size())
                .param("at", clock.instant().atOffset(ZoneOffset.UTC))
                .param("by", by.value())
                .update();
        LOG.info("Weather event {} brought tasks forward at {} installs", id, installs.size());
        return installs.size();
    }

    /** What was recorded, newest first. */
    @Transactional(readOnly = true)
    public List<Recorded> recent() {
        return jdbc.sql("""
                        select w.id, w.name, w.on_date, w.due_on, k.name as kind, w.installs, w.created_at
                        from weather_events w join task_kinds k on k.id = w.task_kind_id order by w.on_date desc, w.id limit 100""").query(Recorded.class).list();
    }
}
