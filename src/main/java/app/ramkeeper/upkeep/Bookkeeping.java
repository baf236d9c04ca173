package app.ramkeeper.upkeep;

import app.ramkeeper.catalogue.TaskKindChanged;
import app.ramkeeper.fleet.ConfigurationChanged;
import app.ramkeeper.fleet.InstallCommissioned;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.InstallMoved;
import app.ramkeeper.fleet.InstallRetired;
import app.ramkeeper.fleet.InstallsRegistered;
import app.ramkeeper.fleet.InstallsRemoved;
import app.ramkeeper.fleet.PumpFitted;
import app.ramkeeper.fleet.PumpRemoved;
import app.ramkeeper.fleet.RunningStateChanged;
import app.ramkeeper.fleet.SiteChanged;
import app.ramkeeper.visits.PartFitted;
import app.ramkeeper.visits.ReportSuperseded;
import app.ramkeeper.visits.VisitReported;
import app.ramkeeper.visits.WorkDone;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** Hears what happens on the register, at visits and in the catalogue, and moves due dates in the same transaction. */
@Component
class Bookkeeping {

    private final Housekeeping housekeeping;
    private final Recompute recompute;
    private final TaskStore tasks;
    private final Forwarding forwarding;

    Bookkeeping(Housekeeping housekeeping, Recompute recompute, TaskStore tasks, Forwarding forwarding) {
        this.housekeeping = housekeeping;
        this.recompute = recompute;
        this.tasks = tasks;
        this.forwarding = forwarding;
    }

    @EventListener
    void on(InstallsRegistered event) {
        housekeeping.installs(event.installs().stream().map(InstallId::value).toList());
    }

    @EventListener
    void on(InstallCommissioned event) {
        keep(event.install());
    }

    @EventListener
    void on(InstallRetired event) {
        keep(event.install());
    }

    @EventListener
    void on(InstallMoved event) {
        keep(event.install());
    }

    @EventListener
    void on(InstallsRemoved event) {
        tasks.removeOf(event.installs().stream().map(InstallId::value).toList());
    }

    @EventListener
    void on(SiteChanged event) {
        housekeeping.installs(tasks.installsOfSite(event.site().value()));
    }

    @EventListener
    void on(PumpFitted event) {
        keep(event.install());
    }

    @EventListener
    void on(PumpRemoved event) {
        keep(event.install());
    }

    @EventListener
    void on(RunningStateChanged event) {
        recompute.installs(List.of(event.install().value()));
    }

    @EventListener
    void on(ConfigurationChanged event) {
        forwarding.configurationChanged(event.install().value(), event.from());
        keep(event.install());
    }

    @EventListener
    void on(VisitReported event) {
        reported(event.works(), event.parts());
    }

    @EventListener
    void on(ReportSuperseded event) {
        reported(event.works(), event.parts());
    }

    @EventListener
    void on(TaskKindChanged event) {
        if (event.tasks()) {
            housekeeping.everywhere(event.kind().value());
        } else {
            recompute.kind(event.kind().value(), event.history());
        }
    }

    private void keep(InstallId install) {
        housekeeping.installs(List.of(install.value()));
    }

    /** Where the work was done, and where the pumps it was done on stand now. */
    private void reported(List<WorkDone> works, List<PartFitted> parts) {
        Set<UUID> pumps = new HashSet<>();
        Stream.concat(works.stream().map(WorkDone::pump), parts.stream().map(PartFitted::pump))
                .forEach(pump -> {
                    if (pump != null) {
                        pumps.add(pump.value());
                    }
                });
        Set<UUID> installs = new HashSet<>(tasks.installsOfPumps(pumps));
        works.forEach(work -> installs.add(work.install().value()));
        parts.forEach(part -> installs.add(part.install().value()));
        recompute.installs(installs);
    }
}
