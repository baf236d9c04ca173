package app.ramkeeper.upkeep;

import app.ramkeeper.catalogue.Schedule;
import app.ramkeeper.catalogue.Scope;
import app.ramkeeper.catalogue.TaskTerms;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Which tasks an install ought to have, compared with those it has. */
final class Places {

    private Places() {}

    /**
     * An install as far as its tasks go.
     *
     * @param working not retired
     * @param planned not commissioned yet: its tasks are there, and count from nothing
     * @param takenOverOn the day it came on the register by an import; null if the books were kept from the start
     * @param pumped a pump is or was on the register here
     * @param pumps those that stand here now, each with the day it began to count
     */
    record Place(
            UUID install,
            boolean working,
            boolean planned,
            boolean drinkingWater,
            @Nullable String waterClass,
            @Nullable LocalDate countingFrom,
            @Nullable LocalDate takenOverOn,
            boolean pumped,
            List<Standing> pumps) {}

    record Standing(
            UUID pump,
            @Nullable UUID model,
            @Nullable LocalDate takenOverOn,
            @Nullable LocalDate countingFrom) {}

    /** A task as it ought to be. */
    record Wanted(
            UUID install,
            @Nullable UUID pump,
            UUID kind,
            @Nullable LocalDate countingFrom) {}

    record Existing(
            UUID id,
            UUID install,
            @Nullable UUID pump,
            UUID kind,
            @Nullable LocalDate countingFrom,
            boolean ended) {

        boolean is(Wanted wanted) {
            return wanted.kind().equals(kind) && java.util.Objects.equals(wanted.pump(), pump);
        }
    }

    /** What is to be done; an update gives the existing task a place, an end is for those without one. */
    record Changes(List<Wanted> create, Map<Existing, Wanted> update, List<Existing> end) {}

    /**
     * Compares. A task whose pump left takes the place of the pump that came, so that what was agreed stays with the
     * place; its dates come from the new pump's own history.
     */
    static Changes compare(Place place, Collection<TaskTerms> kinds, List<Existing> existing, LocalDate today) {
        List<Wanted> open = new ArrayList<>(wanted(place, kinds, today));
        List<Existing> loose = new ArrayList<>();
        Map<Existing, Wanted> update = new HashMap<>();
        for (Existing task : existing) {
            Wanted same = open.stream().filter(task::is).findFirst().orElse(null);
            if (same != null) {
                open.remove(same);
                update.put(task, same);
            } else {
                loose.add(task);
            }
        }
        List<Existing> end = new ArrayList<>();
        Map<UUID, Boolean> byEvent = new HashMap<>();
        kinds.forEach(kind -> byEvent.put(kind.id().value(), kind.schedule() == Schedule.EVENT));
        for (Existing task : loose) {
            Wanted other = open.stream()
                    .filter(w -> w.kind().equals(task.kind()))
                    .findFirst()
                    .orElse(null);
            if (other != null) {
                open.remove(other);
                update.put(task, other);
            } else if (place.working() && byEvent.getOrDefault(task.kind(), false)) {
                update.put(task, new Wanted(task.install(), task.pump(), task.kind(), task.countingFrom()));
            } else {
                end.add(task);
            }
        }
        return new Changes(open, update, end);
    }

    private static List<Wanted> wanted(Place place, Collection<TaskTerms> kinds, LocalDate today) {
        List<Wanted> wanted = new ArrayList<>();
        if (!place.working()) {
            return wanted;
        }
        for (TaskTerms kind : kinds) {
            if (kind.schedule() != Schedule.EVENT && (place.drinkingWater() || !kind.drinkingWater())) {
                UUID id = kind.id().value();
                if (kind.scope() == Scope.PUMP && place.pumped()) {
                    place.pumps()
                            .forEach(pump -> wanted.add(new Wanted(
                                    place.install(),
                                    pump.pump(),
                                    id,
                                    from(place, kind, pump.model(), pump.countingFrom(), pump.takenOverOn(), today))));
                } else {
                    wanted.add(new Wanted(
                            place.install(),
                            null,
                            id,
                            from(place, kind, null, place.countingFrom(), place.takenOverOn(), today)));
                }
            }
        }
        return wanted;
    }

    /**
     * Where the first interval begins. A season comes round whether or not anybody knows what was done before: it counts
     * from now. At an install that an import brought, what should have been done before then may well have been: such a
     * task's last day is not known, and a season counts from that day.
     */
    private static @Nullable LocalDate from(
            Place place,
            TaskTerms kind,
            @Nullable UUID model,
            @Nullable LocalDate known,
            @Nullable LocalDate takenOver,
            LocalDate today) {
        if (place.planned()) {
            return null;
        }
        if (kind.schedule() == Schedule.SEASON) {
            return takenOver != null && (known == null || known.isBefore(takenOver))
                    ? takenOver
                    : known == null ? today : known;
        }
        return takenOver != null
                        && known != null
                        && firstEnded(place, kind, model, known).isBefore(takenOver)
                ? null
                : known;
    }

    private static LocalDate firstEnded(Place place, TaskTerms kind, @Nullable UUID model, LocalDate from) {
        return kind.intervalFor(model, place.waterClass()).after(from).plusDays(kind.lateDays());
    }
}
