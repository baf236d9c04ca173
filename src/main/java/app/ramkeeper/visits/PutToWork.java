package app.ramkeeper.visits;

import app.ramkeeper.fleet.InstallId;
import java.util.Comparator;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What a commissioning says of itself: which installs it put to work, and what was read there for the baseline. */
public final class PutToWork {

    private PutToWork() {}

    /** The install that is said; a report that does not say tells it by its flows, or by all that it speaks of. */
    public static Set<InstallId> installs(RecordVisit command) {
        RecordVisit.Commissioned said = command.commissioned();
        if (said != null && said.install() != null) {
            return Set.of(said.install());
        }
        Set<InstallId> spoken = Stream.concat(
                        command.works().stream().map(RecordVisit.Work::install),
                        command.readings().stream().map(RecordVisit.Reading::install))
                .collect(Collectors.toSet());
        Set<InstallId> measured = spoken.stream()
                .filter(install -> read(command, install, Quantity.DELIVERED_FLOW) != null)
                .collect(Collectors.toSet());
        return measured.isEmpty() ? spoken : measured;
    }

    /** The comparable value in SI. What reached the tank counts before what left the pump: it is what the customer gets. */
    public static @Nullable Double read(RecordVisit command, InstallId install, Quantity quantity) {
        return command.readings().stream()
                .filter(r -> r.install().equals(install) && r.quantity() == quantity)
                .filter(r -> r.notComparable() == null && r.value().si() > 0)
                .min(Comparator.comparing(r -> r.place() != MeasuredAt.TANK))
                .map(r -> r.value().si())
                .orElse(null);
    }
}
