package app.ramkeeper.fleet;

import app.ramkeeper.identity.ForAll;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.web.Say;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Keeps the movable pumps and where each was when. */
@Service
@ForAll
@Transactional
public class PumpRegister {

    private static final String OPEN = """
            insert into pump_fittings (id, pump_id, place, install_id, place_no, from_date, reason)
            values (?, ?, ?, ?, ?, ?, ?)""";

    private final PumpRepository pumps;
    private final JdbcClient jdbc;
    private final JdbcTemplate batch;
    private final ApplicationEventPublisher events;

    PumpRegister(PumpRepository pumps, JdbcClient jdbc, JdbcTemplate batch, ApplicationEventPublisher events) {
        this.pumps = pumps;
        this.jdbc = jdbc;
        this.batch = batch;
        this.events = events;
    }

    public PumpId register(PumpDetails details) {
        PumpId id = PumpId.next();
        register(id, details);
        return id;
    }

    /** Registers under an id made by the form, so that a second post of it changes nothing. */
    public void register(PumpId id, PumpDetails details) {
        if (!pumps.existsById(id.value())) {
            pumps.saveAndFlush(new Pump(id.value(), details));
        }
    }

    public void edit(PumpId id, int version, PumpDetails details) {
        Pump pump = find(id);
        Versions.require(pump.version, version, Pump.class, id);
        pump.details = details;
        pumps.flush();
    }

    /** Fits a pump, wherever it was before; what stood at that place goes elsewhere on the same day. */
    public void fit(FitPump command) {
        Pump pump = find(command.pump());
        if (pump.retiredOn != null) {
            throw new Conflict("That pump was retired on " + Say.day(pump.retiredOn) + ".");
        }
        standsAt(command.install(), command.placeNo())
                .filter(old -> !old.equals(command.pump()))
                .ifPresent(old -> move(old, command.oldGoesTo(), command.on(), command.reason()));
        close(command.pump(), command.on());
        open(
                command.pump(),
                command.loan() ? PumpPlace.LOAN : PumpPlace.INSTALL,
                command.install(),
                command.placeNo(),
                command.on(),
                command.reason());
        events.publishEvent(new PumpFitted(command.install(), command.pump(), command.on()));
    }

    /** Takes a pump to the workshop, to the store or out of use. */
    public void move(PumpId id, PumpPlace place, LocalDate on, @Nullable String reason) {
        if (place == PumpPlace.INSTALL || place == PumpPlace.LOAN) {
            throw new Conflict("To put a pump to work, fit it in an install.");
        }
        Pump pump = find(id);
        close(id, on);
        open(id, place, null, null, on, reason);
        if (place == PumpPlace.RETIRED) {
            pump.retiredOn = on;
            pumps.flush();
        }
    }

    /** A pump of a new install. */
    private record Standing(
            PumpId pump,
            InstallId install,
            int placeNo,
            @Nullable LocalDate since) {}

    /** Registers the pumps of new installs, where each has stood since some day, or since nobody knows when; tells nobody. */
    void placeNew(Map<InstallId, RegisterInstall> added) {
        List<Pump> rows = new ArrayList<>();
        List<Standing> standing = new ArrayList<>();
        added.forEach((install, command) -> {
            int place = 1;
            for (PumpDetails details : command.pumps()) {
                PumpId id = PumpId.next();
                rows.add(new Pump(id.value(), details));
                standing.add(
                        new Standing(id, install, place++, command.install().commissionedOn()));
            }
        });
        pumps.saveAllAndFlush(rows);
        batch.batchUpdate(OPEN, standing, 1000, (row, at) -> {
            row.setObject(1, Uuids.next());
            row.setObject(2, at.pump().value());
            row.setString(3, PumpPlace.INSTALL.name());
            row.setObject(4, at.install().value());
            row.setObject(5, at.placeNo());
            row.setObject(6, at.since());
            row.setString(7, null);
        });
    }

    private Optional<PumpId> standsAt(InstallId install, int placeNo) {
        return jdbc.sql("""
                        select pump_id from pump_fittings
                        where install_id = :install and place_no = :place and until_date is null""")
                .param("install", install.value())
                .param("place", placeNo)
                .query(UUID.class)
                .optional()
                .map(PumpId::new);
    }

    private void close(PumpId pump, LocalDate on) {
        record Open(
                UUID id, @Nullable UUID install, @Nullable LocalDate from) {}
        Open open = jdbc.sql("""
                        select id, install_id, from_date from pump_fittings
                        where pump_id = :pump and until_date is null for update""")
                .param("pump", pump.value())
                .query((rs, n) -> new Open(
                        rs.getObject(1, UUID.class), rs.getObject(2, UUID.class), rs.getObject(3, LocalDate.class)))
                .optional()
                .orElse(null);
        if (open == null) {
            return;
        }
        if (open.from() != null && !on.isAfter(open.from())) {
            throw new Conflict("That pump is where it is since " + Say.day(open.from())
                    + "; it can move again the day after at the earliest.");
        }
        jdbc.sql("update pump_fittings set until_date = :on where id = :id")
                .param("on", on)
                .param("id", open.id())
                .update();
        if (open.install() != null) {
            events.publishEvent(new PumpRemoved(new InstallId(open.install()), pump, on));
        }
    }

    private void open(
            PumpId pump,
            PumpPlace place,
            @Nullable InstallId install,
            @Nullable Integer placeNo,
            @Nullable LocalDate from,
            @Nullable String reason) {
        jdbc.sql(OPEN)
                .param(Uuids.next())
                .param(pump.value())
                .param(place.name())
                .param(install == null ? null : install.value())
                .param(placeNo)
                .param(from)
                .param(reason)
                .update();
    }

    private Pump find(PumpId id) {
        return pumps.findById(id.value()).orElseThrow(() -> new Missing("pump", id));
    }

    /** What an edit form shows, private notes included. */
    @Transactional(readOnly = true)
    public Versioned<PumpDetails> read(PumpId id) {
        Pump pump = pumps.findById(id.value()).orElseThrow(() -> new Missing("pump", id));
        return new Versioned<>(Versions.of(pump.version), pump.details);
    }
}
