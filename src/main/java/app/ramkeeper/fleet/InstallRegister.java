package app.ramkeeper.fleet;

import app.ramkeeper.identity.ForRegister;
import app.ramkeeper.shared.Missing;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Puts installs on the register and keeps what is known of them. */
@Service
@ForRegister
@Transactional
public class InstallRegister {

    private final InstallRepository installs;
    private final InstallWorks works;
    private final PumpRegister pumps;
    private final JdbcClient jdbc;
    private final ApplicationEventPublisher events;

    InstallRegister(
            InstallRepository installs,
            InstallWorks works,
            PumpRegister pumps,
            JdbcClient jdbc,
            ApplicationEventPublisher events) {
        this.installs = installs;
        this.works = works;
        this.pumps = pumps;
        this.jdbc = jdbc;
        this.events = events;
    }

    /** Registers an install with its first configuration, baseline, pumps and, once handed over, running state. */
    public InstallId register(RegisterInstall command) {
        InstallId id = InstallId.next();
        register(id, command);
        return id;
    }

    /** Registers under an id made by the form, so that a second post of it changes nothing. */
    public void register(InstallId id, RegisterInstall command) {
        if (!installs.existsById(id.value())) {
            register(Map.of(id, command), null);
        }
    }

    /** Registers many in one go, each under an id the caller made, that were at work before the books knew them: an import. */
    public void takeOver(Map<InstallId, RegisterInstall> added, LocalDate on) {
        register(added, on);
    }

    private void register(Map<InstallId, RegisterInstall> added, @Nullable LocalDate takenOverOn) {
        List<Install> rows = new ArrayList<>();
        added.forEach(
                (id, command) -> rows.add(new Install(id.value(), command.site().value(), command.install())));
        installs.saveAllAndFlush(rows);
        if (takenOverOn != null) {
            jdbc.sql("update installs set taken_over_on = :on where id = any(:ids)")
                    .param("on", takenOverOn)
                    .param("ids", added.keySet().stream().map(InstallId::value).toArray(UUID[]::new))
                    .update();
        }
        works.begin(added);
        pumps.placeNew(added);
        events.publishEvent(new InstallsRegistered(List.copyOf(added.keySet())));
    }

    /**
     * Changes what is known about an install; to hand it over, commission it instead.
     *
     * @throws org.springframework.dao.OptimisticLockingFailureException if it is no longer at that version
     */
    public void edit(InstallId id, int version, InstallDetails details) {
        Install install = installs.findById(id.value()).orElseThrow(() -> new Missing("install", id));
        Versions.require(install.version, version, Install.class, id);
        InstallDetails before = install.details;
        install.details = details;
        installs.flush();
        LocalDate since = details.commissionedOn();
        if (since != null && !since.equals(before.commissionedOn())) {
            works.correctCommissioning(id, before.commissionedOn(), since);
            events.publishEvent(new InstallCommissioned(id, since));
        }
    }

    /**
     * Takes installs off the register again that nothing refers to and nobody has changed: an import undone.
     *
     * @return those that are in use or were changed; if there are any, none is taken off
     */
    public List<UUID> removeUntouched(Collection<InstallId> installs) {
        UUID[] ids = installs.stream().map(InstallId::value).toArray(UUID[]::new);
        List<UUID> touched = jdbc.sql("""
                        select asked.id from unnest(:ids::uuid[]) as asked(id) where not exists (select from installs i where i.id = asked.id
                          and version = 0
                          and (select count(*) from configurations c where c.install_id = i.id) = 1
                          and not exists (select from configurations c where c.install_id = i.id and c.version > 0)
                          and not exists (select from pump_fittings f where f.install_id = i.id and f.until_date is not null)
                          and (select count(*) from running_states r where r.install_id = i.id) <= 1
                          and not exists (select from components k where k.install_id = i.id)
                          and not exists (select from system_elements e where e.install_id = i.id)
                          and not exists (select from agreement_installs a where a.install_id = i.id))""").param("ids", ids).query(UUID.class).list();
        if (touched.isEmpty() && ids.length > 0) {
            events.publishEvent(new InstallsRemoved(List.copyOf(installs)));
            remove(ids);
        }
        return touched;
    }

    private void remove(UUID[] ids) {
        UUID[] pumpIds = jdbc.sql("delete from pump_fittings where install_id = any(:ids) returning pump_id")
                .param("ids", ids)
                .query(UUID.class)
                .list()
                .toArray(UUID[]::new);
        jdbc.sql("""
                        delete from pumps p where id = any(:pumps) and version = 0
                          and not exists (select from pump_fittings f where f.pump_id = p.id)""").param("pumps", pumpIds).update();
        for (String table : List.of("running_states", "configurations")) {
            jdbc.sql("delete from " + table + " where install_id = any(:ids)")
                    .param("ids", ids)
                    .update();
        }
        jdbc.sql("delete from installs where id = any(:ids)").param("ids", ids).update();
    }

    /** What an edit form shows, private notes included. */
    @Transactional(readOnly = true)
    public Versioned<InstallDetails> read(InstallId id) {
        Install install = installs.findById(id.value()).orElseThrow(() -> new Missing("install", id));
        return new Versioned<>(Versions.of(install.version), install.details);
    }
}
