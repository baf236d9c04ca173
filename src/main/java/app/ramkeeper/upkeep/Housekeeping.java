package app.ramkeeper.upkeep;

import app.ramkeeper.catalogue.Catalogue;
import app.ramkeeper.catalogue.TaskTerms;
import app.ramkeeper.upkeep.Places.Changes;
import app.ramkeeper.upkeep.Places.Existing;
import app.ramkeeper.upkeep.Places.Place;
import app.ramkeeper.upkeep.Places.Wanted;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Keeps the tasks that each install ought to have, in the transaction of what changed it. */
@Service
@Transactional(propagation = Propagation.MANDATORY)
class Housekeeping {

    private static final int BATCH = 1000;

    private final PlaceStore store;
    private final Recompute recompute;
    private final Catalogue catalogue;
    private final Clock clock;

    Housekeeping(PlaceStore store, Recompute recompute, Catalogue catalogue, Clock clock) {
        this.store = store;
        this.recompute = recompute;
        this.catalogue = catalogue;
        this.clock = clock;
    }

    /** Makes, moves and ends tasks of these installs, then works out all their dates. */
    void installs(Collection<UUID> installs) {
        keep(installs);
        recompute.installs(installs);
    }

    private void keep(Collection<UUID> installs) {
        LocalDate today = LocalDate.now(clock);
        Collection<TaskTerms> kinds = catalogue.terms().values().stream()
                .filter(kind -> kind.withdrawnOn() == null)
                .toList();
        List<Place> places = store.places(installs);
        Map<UUID, List<Existing>> existing = store.existing(installs);
        List<Wanted> create = new ArrayList<>();
        Map<Existing, Wanted> place = new HashMap<>();
        List<Existing> end = new ArrayList<>();
        for (Place at : places) {
            Changes changes = Places.compare(at, kinds, existing.getOrDefault(at.install(), List.of()), today);
            create.addAll(changes.create());
            changes.update().forEach((task, wanted) -> {
                if (differs(task, wanted)) {
                    place.put(task, wanted);
                }
            });
            changes.end().stream().filter(task -> !task.ended()).forEach(end::add);
        }
        store.create(create);
        store.place(place);
        store.end(end, today);
    }

    /** All installs, a batch at a time, after a kind of task was added, withdrawn or given to other installs. */
    void everywhere(UUID kind) {
        List<UUID> next = store.installsAfter(Recompute.FIRST, BATCH);
        while (!next.isEmpty()) {
            keep(next);
            next = store.installsAfter(next.get(next.size() - 1), BATCH);
        }
        recompute.kind(kind, true);
    }

    private static boolean differs(Existing task, Wanted wanted) {
        return task.ended()
                || !Objects.equals(task.pump(), wanted.pump())
                || !Objects.equals(task.countingFrom(), wanted.countingFrom());
    }
}
