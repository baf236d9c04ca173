package app.ramkeeper.rounds.week;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Whether a visit may stand in a round at all, whatever the time of day. */
public final class Rules {

    private final Hours hours;
    private final Supplies supplies;
    private final Map<String, String> skillNames;

    Rules(Hours hours, Supplies supplies, Map<String, String> skillNames) {
        this.hours = hours;
        this.supplies = supplies;
        this.skillNames = skillNames;
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
