package app.ramkeeper.fleet;

import app.ramkeeper.identity.ForAll;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.web.Say;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What happens to an install by date: handed over, laid out anew, stopped, asleep, retired, a component fitted. */
@Service
@ForAll
@Transactional
public class InstallWorks {

    private static final String OPEN_STATE =
            "insert into running_states (id, install_id, state, from_date, reason) values (?, ?, ?, ?, ?)";

    private final InstallRepository installs;
    private final ConfigurationRepository configurations;
    private final JdbcClient jdbc;
    private final JdbcTemplate batch;
    private final ApplicationEventPublisher events;

    InstallWorks(
            InstallRepository installs,
            ConfigurationRepository configurations,
            JdbcClient jdbc,
            JdbcTemplate batch,
            ApplicationEventPublisher events) {
        this.installs = installs;
        this.configurations = configurations;
        this.jdbc = jdbc;
        this.batch = batch;
        this.events = events;
    }

    /** Hands an install over: it runs from that day on. */
    public void commission(InstallId id, LocalDate on, @Nullable BaselineDetails baseline) {
        Install install = atWork(id);
        InstallDetails known = install.details;
        if (known.commissionedOn() != null || !known.commissioningKnown()) {
            throw new Conflict("This install was commissioned already.");
        }
        install.details = new InstallDetails(known.reference(), known.name(), on, true, known.warrantyUntil());
        installs.flush();
        if (baseline != null) {
            configurations.findOn(id.value(), on).ifPresent(then -> keepBaseline(new ConfigurationId(then), baseline));
        }
        openState(id, RunningState.RUNNING, on, null);
        events.publishEvent(new InstallCommissioned(id, on));
    }

    /** Closes the configuration in force and opens a new one, which needs a baseline of its own. */
    public ConfigurationId changeConfiguration(
            InstallId id,
            LocalDate from,
            @Nullable String reason,
            ConfigurationDetails details,
            @Nullable BaselineDetails baseline) {
        atWork(id);
        configurations.findByInstallIdAndUntilDateIsNull(id.value()).ifPresent(current -> {
            if (current.fromDate != null && !from.isAfter(current.fromDate)) {
                throw new Conflict("The configuration in force began on " + Say.day(current.fromDate)
                        + "; a new one must begin later. To mend a slip, correct that one.");
            }
            current.close(from);
            configurations.flush();
        });
        ConfigurationId next = open(id, from, reason, details);
        if (baseline != null) {
            keepBaseline(next, baseline);
        }
        events.publishEvent(new ConfigurationChanged(id, next, from));
        return next;
    }

    /** Mends a configuration that was noted wrongly; its days and its baseline stay. */
    public void correctConfiguration(
            ConfigurationId id, int version, @Nullable String reason, ConfigurationDetails details) {
        Configuration configuration =
                configurations.findById(id.value()).orElseThrow(() -> new Missing("configuration", id));
        Versions.require(configuration.version, version, Configuration.class, id);
        configuration.reason = reason;
        configuration.details = details;
        configurations.flush();
    }

    /** Keeps the valve setting that was found best on the spot, in place of an earlier one. */
    public void keepValveSetting(ConfigurationId id, String setting) {
        Configuration configuration =
                configurations.findById(id.value()).orElseThrow(() -> new Missing("configuration", id));
        ConfigurationDetails known = configuration.details;
        configuration.details = (known == null ? ConfigurationDetails.unknown() : known).withValveSetting(setting);
        configurations.flush();
    }

    /** Keeps what was measured when a configuration was set, in place of an earlier baseline. */
    public void keepBaseline(ConfigurationId configuration, BaselineDetails baseline) {
        jdbc.sql("""
                        insert into baselines (id, configuration_id, taken_on, drive_flow_si, delivered_flow_si,
                          beat_rate_si, delivery_pressure_si, report_id)
                        values (:id, :configuration, :taken, :drive, :delivered, :beat, :pressure, :report)
                        on conflict (configuration_id) do update set taken_on = excluded.taken_on,
                          drive_flow_si = excluded.drive_flow_si, delivered_flow_si = excluded.delivered_flow_si,
                          beat_rate_si = excluded.beat_rate_si, delivery_pressure_si = excluded.delivery_pressure_si,
                          report_id = excluded.report_id""")
                .param("id", Uuids.next())
                .param("configuration", configuration.value())
                .param("taken", baseline.takenOn())
                .param("drive", baseline.driveFlowSi())
                .param("delivered", baseline.deliveredFlowSi())
                .param("beat", baseline.beatRateSi())
                .param("pressure", baseline.deliveryPressureSi())
                .param("report", baseline.report())
                .update();
    }

    /** The install does something else from a day on. */
    public void changeState(InstallId id, RunningState state, LocalDate from, @Nullable String reason) {
        if (state == RunningState.RETIRED) {
            throw new Conflict("To take an install out of work for good, retire it.");
        }
        atWork(id);
        switchState(id, state, from, reason);
        events.publishEvent(new RunningStateChanged(id, state, from));
    }

    /** Takes an install out of work for good; its pumps must have been taken out. */
    public void retire(InstallId id, LocalDate on, @Nullable String reason) {
        Install install = atWork(id);
        boolean pumpsThere = jdbc.sql(
                        "select exists (select from pump_fittings where install_id = :id and until_date is null)")
                .param("id", id.value())
                .query(Boolean.class)
                .single();
        if (pumpsThere) {
            throw new Conflict(
                    "A pump still stands there. Take it out first: to the workshop, to the store or retired.");
        }
        install.retiredOn = on;
        installs.flush();
        switchState(id, RunningState.RETIRED, on, reason);
        events.publishEvent(new RunningStateChanged(id, RunningState.RETIRED, on));
        events.publishEvent(new InstallRetired(id, on));
    }

    /** A component is fitted; what sat there may go out on the same day. */
    public void fitComponent(NewComponent part) {
        fitComponent(Uuids.next(), part);
    }

    /** The same under an id made by the form: a second post of it changes nothing. */
    public void fitComponent(UUID id, NewComponent part) {
        if (jdbc.sql("select exists (select from components where id = :id)")
                .param("id", id)
                .query(Boolean.class)
                .single()) {
            return;
        }
        if (part.replaces() && part.fittedOn() != null) {
            jdbc.sql("""
                            update components set removed_on = :on
                            where install_id = :install and position = :position and removed_on is null
                              and pump_id is not distinct from :pump and (fitted_on is null or fitted_on <= :on)""")
                    .param("on", part.fittedOn())
                    .param("install", part.install().value())
                    .param("position", part.position().name())
                    .param("pump", part.pump() == null ? null : part.pump().value())
                    .update();
        }
        jdbc.sql("""
                        insert into components (id, install_id, pump_id, position, part_id, fitted_on, fitted_known,
                          batch, serial, rating_bar, note)
                        values (:id, :install, :pump, :position, :part, :on, :known, :batch, :serial, :rating, :note)""")
                .param("id", id)
                .param("install", part.install().value())
                .param("pump", part.pump() == null ? null : part.pump().value())
                .param("position", part.position().name())
                .param("part", part.part() == null ? null : part.part().value())
                .param("on", part.fittedOn())
                .param("known", part.fittedOn() != null)
                .param("batch", part.batch())
                .param("serial", part.serial())
                .param("rating", part.ratingBar())
                .param("note", part.note())
                .update();
    }

    /** Opens the first configuration, baseline and, once handed over, running state of new installs. */
    void begin(Map<InstallId, RegisterInstall> added) {
        List<Configuration> first = new ArrayList<>();
        Map<ConfigurationId, BaselineDetails> baselines = new HashMap<>();
        List<Running> running = new ArrayList<>();
        added.forEach((install, command) -> {
            ConfigurationId id = ConfigurationId.next();
            InstallDetails details = command.install();
            LocalDate since = details.commissionedOn();
            first.add(new Configuration(id.value(), install.value(), since, null, command.configuration()));
            if (command.baseline() != null) {
                baselines.put(id, command.baseline());
            }
            if (since != null || !details.commissioningKnown()) {
                running.add(new Running(install, since));
            }
        });
        configurations.saveAllAndFlush(first);
        baselines.forEach(this::keepBaseline);
        batch.batchUpdate(OPEN_STATE, running, 1000, (row, at) -> {
            row.setObject(1, Uuids.next());
            row.setObject(2, at.install().value());
            row.setString(3, RunningState.RUNNING.name());
            row.setObject(4, at.since());
            row.setString(5, null);
        });
    }

    private record Running(InstallId install, @Nullable LocalDate since) {}

    ConfigurationId open(
            InstallId install, @Nullable LocalDate from, @Nullable String reason, ConfigurationDetails details) {
        ConfigurationId id = ConfigurationId.next();
        configurations.saveAndFlush(new Configuration(id.value(), install.value(), from, reason, details));
        return id;
    }

    void openState(InstallId install, RunningState state, @Nullable LocalDate from, @Nullable String reason) {
        jdbc.sql(OPEN_STATE)
                .param(Uuids.next())
                .param(install.value())
                .param(state.name())
                .param(from)
                .param(reason)
                .update();
    }

    /** The commissioning day was noted wrongly or became known: what began with it begins on the right day. */
    void correctCommissioning(InstallId install, @Nullable LocalDate before, LocalDate since) {
        for (String table : new String[] {"configurations", "running_states", "pump_fittings"}) {
            jdbc.sql("update " + table + " set from_date = :since"
                            + " where install_id = :install and from_date is not distinct from cast(:before as date)")
                    .param("since", since)
                    .param("install", install.value())
                    .param("before", before)
                    .update();
        }
        boolean known = jdbc.sql("select exists (select from running_states where install_id = :install)")
                .param("install", install.value())
                .query(Boolean.class)
                .single();
        if (!known) {
            openState(install, RunningState.RUNNING, since, null);
        }
    }

    private void switchState(InstallId install, RunningState state, LocalDate from, @Nullable String reason) {
        LocalDate since = jdbc.sql("select from_date from running_states where install_id = :id and until_date is null")
                .param("id", install.value())
                .query((rs, n) -> rs.getObject(1, LocalDate.class))
                .optional()
                .orElse(null);
        if (since != null && !from.isAfter(since)) {
            replaceState(install, state, from, since, reason);
            return;
        }
        jdbc.sql("update running_states set until_date = :from where install_id = :id and until_date is null")
                .param("from", from)
                .param("id", install.value())
                .update();
        openState(install, state, from, reason);
    }

    /** Two states of one day: the later word holds. An earlier day would rewrite what was known and is refused. */
    private void replaceState(
            InstallId install, RunningState state, LocalDate from, LocalDate since, @Nullable String reason) {
        if (from.isBefore(since)) {
            throw new Conflict(
                    "The present state began on " + Say.day(since) + "; a change must be of that day or later.");
        }
        jdbc.sql("""
                        update running_states set state = :state, reason = :reason
                        where install_id = :id and until_date is null""")
                .param("state", state.name())
                .param("reason", reason)
                .param("id", install.value())
                .update();
    }

    private Install atWork(InstallId id) {
        Install install = installs.findById(id.value()).orElseThrow(() -> new Missing("install", id));
        if (install.retiredOn != null) {
            throw new Conflict("This install was retired on " + Say.day(install.retiredOn) + ".");
        }
        return install;
    }

    /** What the form shows that mends a configuration. */
    @Transactional(readOnly = true)
    public Versioned<ConfigurationDetails> read(ConfigurationId id) {
        Configuration configuration =
                configurations.findById(id.value()).orElseThrow(() -> new Missing("configuration", id));
        ConfigurationDetails details = configuration.details;
        return new Versioned<>(
                Versions.of(configuration.version), details == null ? ConfigurationDetails.unknown() : details);
    }
}
