package app.ramkeeper.rounds.week;

import app.ramkeeper.visits.WorksBehind.Works;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Whether a visit may stand in a round at all, whatever the time of day. */
public final class Rules {

    private final Hours hours;
    private final Supplies supplies;
    private final Map<String, String> skillNames;
    private final Map<UUID, Works> works;
    private final Map<UUID, LocalDate> firstOn;

    Rules(Hours hours, Supplies supplies, Map<String, String> skillNames) {
        this(hours, supplies, skillNames, Map.of(), Map.of());
    }

    Rules(
            Hours hours,
            Supplies supplies,
            Map<String, String> skillNames,
            Map<UUID, Works> works,
            Map<UUID, LocalDate> firstOn) {
        this.hours = hours;
        this.supplies = supplies;
        this.skillNames = skillNames;
        this.works = works;
        this.firstOn = firstOn;
    }

    /** The same rules where visits that others must wait for stand as in these stops. */
    Rules where(List<Stop> stops) {
        if (works.isEmpty()) {
            return this;
        }
        Map<UUID, LocalDate> days = new HashMap<>();
        works.values().forEach(w -> {
            if (w.first() != null && w.firstOn() != null) {
                days.put(w.first(), w.firstOn());
            }
        });
        stops.stream()
                .filter(stop -> stop.visitId() != null)
                .forEach(stop -> days.compute(stop.visitId(), (visit, planned) -> stop.day()));
        return new Rules(hours, supplies, skillNames, works, days);
    }

    /** The works that a visit belongs to, if it is one of those that take days. */
    public @Nullable Works works(Stop stop) {
        return stop.visitId() == null ? null : works.get(stop.visitId());
    }

    /** Why the works that a visit belongs to keep it out of the whole week, in words; null if they do not. */
    public @Nullable String worksKeepOut(Stop stop) {
        Works of = works(stop);
        if (of == null) {
            return null;
        }
        if (of.held() != null) {
            return "the job is on hold: " + of.held();
        }
        return of.first() != null && !firstOn.containsKey(of.first())
                ? "the installation comes first, and has no day yet"
                : null;
    }

    private @Nullable String worksForbid(Stop stop, TechDay round) {
        String never = worksKeepOut(stop);
        Works of = works(stop);
        LocalDate first = of == null || of.first() == null ? null : firstOn.get(of.first());
        return never != null || first == null || first.isBefore(round.day())
                ? never
                : "the installation comes first, and that is on " + Times.day(first);
    }

    public Hours hours() {
        return hours;
    }

    /** Why the visit must not stand in the round, in words; null if it may. */
    public @Nullable String whyNot(Stop stop, TechDay round) {
        if (round.away() != null) {
            return round.name() + " " + round.away();
        }
        if (stop.where() == null) {
            return "the site has no position";
        }
        String works = worksForbid(stop, round);
        if (works != null) {
            return works;
        }
        if (stop.fixedOn() != null && !stop.fixedOn().equals(round.day())) {
            return stop.held();
        }
        if (round.day().equals(stop.notOn())) {
            return "the customer asked for another day";
        }
        String missing = missingSkill(stop, round);
        if (missing != null) {
            return missing;
        }
        if (stop.crew() > round.crew()) {
            return "needs " + stop.crew() + " people and " + round.name()
                    + (round.crew() == 1 ? " goes alone" : " goes with one other");
        }
        String closed = closed(stop, round);
        if (closed != null) {
            return closed;
        }
        String part = supplies.shortFor(stop.id(), round.personId(), round.depotId());
        return part == null ? null : "not enough in van and depot of " + round.name() + ": " + part;
    }

    private @Nullable String missingSkill(Stop stop, TechDay round) {
        List<String> missing = stop.skillList().stream()
                .filter(skill -> !round.skills().contains(skill))
                .toList();
        if (missing.isEmpty()) {
            return null;
        }
        String name = missing.get(0);
        return round.name() + " is not trained for "
                + skillNames.getOrDefault(name, name).toLowerCase(java.util.Locale.UK);
    }

    private @Nullable String closed(Stop stop, TechDay round) {
        String reason = hours.closedOn(stop.siteId(), round.day());
        if (reason != null) {
            return reason;
        }
        List<Hours.Window> open = hours.on(stop.siteId(), round.day());
        if (open.isEmpty()) {
            return "no access on that weekday";
        }
        return open.stream().noneMatch(w -> w.until() - w.from() >= stop.minutes())
                ? "the access hours of that day are shorter than the work"
                : null;
    }
}
