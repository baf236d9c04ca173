package app.ramkeeper.visits;

import app.ramkeeper.fleet.BaselineDetails;
import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.InstallCard;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.InstallWorks;
import java.util.Comparator;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** What a commissioning visit means for the register: the install is handed over, its readings become the baseline. */
@Component
class Commissioning {

    private final Fleet fleet;
    private final InstallWorks works;

    Commissioning(Fleet fleet, InstallWorks works) {
        this.fleet = fleet;
        this.works = works;
    }

    void apply(RecordVisit command) {
        if (command.kind() == VisitKind.COMMISSIONING && command.outcome() == ReportOutcome.DONE) {
            installs(command).forEach(install -> apply(command, install));
        }
    }

    private static Set<InstallId> installs(RecordVisit command) {
        return Stream.concat(
                        command.works().stream().map(RecordVisit.Work::install),
                        command.readings().stream().map(RecordVisit.Reading::install))
                .collect(Collectors.toSet());
    }

    private void apply(RecordVisit command, InstallId id) {
        InstallCard install = fleet.install(id);
        Optional<BaselineDetails> baseline = baseline(command, id);
        if (install.commissionedOn() == null && install.commissioningKnown()) {
            works.commission(id, command.attendedOn(), baseline.orElse(null));
        } else {
            baseline.ifPresent(measured -> fleet.configurationOn(id, command.attendedOn())
                    .ifPresent(configuration -> works.keepBaseline(configuration.id(), measured)));
        }
    }

    /** The comparable readings as a baseline, if there is one and the flows are possible together. */
    static Optional<BaselineDetails> baseline(RecordVisit command, InstallId install) {
        Double drive = reading(command, install, Quantity.DRIVE_FLOW);
        Double delivered = reading(command, install, Quantity.DELIVERED_FLOW);
        Double beat = reading(command, install, Quantity.BEAT_RATE);
        Double pressure = reading(command, install, Quantity.DELIVERY_PRESSURE);
        boolean none = drive == null && delivered == null && beat == null && pressure == null;
        boolean impossible = drive != null && delivered != null && delivered >= drive;
        return none || impossible
                ? Optional.empty()
                : Optional.of(new BaselineDetails(
                        command.attendedOn(),
                        drive,
                        delivered,
                        beat,
                        pressure,
                        command.id().value()));
    }

    /** What reached the tank counts before what left the pump: it is what the customer gets. */
    private static @Nullable Double reading(RecordVisit command, InstallId install, Quantity quantity) {
        return command.readings().stream()
                .filter(r -> r.install().equals(install) && r.quantity() == quantity)
                .filter(r -> r.notComparable() == null && r.value().si() > 0)
                .min(Comparator.comparing(r -> r.place() != MeasuredAt.TANK))
                .map(r -> r.value().si())
                .orElse(null);
    }
}
